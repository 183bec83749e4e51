// Freezes every built-in before anything else is loaded, as a hardened host does.
//
// A plain freeze of a prototype also keeps other objects from having a property of that name assigned (`object.toString =
// …` throws), which breaks careful and careless code alike; so, as hardened hosts do, each data property of the common
// prototypes first becomes an accessor that lets an assignment make a property of the object’s own.
// Deno makes its `Buffer` when it is first asked for, by assigning to a function what `Uint8Array` has too; it cannot
// once that is frozen. A reference library of the tests asks for it, so it is made before.
void globalThis.Buffer;
const { defineProperty, freeze, getOwnPropertyDescriptor } = Object;
const prototypes = [Object, Function, Array, String, Number, Boolean, Date, RegExp, Promise, Map, Set]
  .map(({ prototype }) => prototype)
  .concat([Error, TypeError, RangeError, SyntaxError].map(({ prototype }) => prototype));

const seen = new Set();
(function gather(value) {
  if ((typeof value !== 'object' && typeof value !== 'function') || value === null || seen.has(value)) return;
  seen.add(value);
  for (const key of Reflect.ownKeys(value)) {
    const { value: held, get, set } = getOwnPropertyDescriptor(value, key);
    [held, get, set].forEach(gather);
  }
  gather(Reflect.getPrototypeOf(value));
})([
  ...[Object, Function, Array, String, Number, Boolean, Symbol, BigInt, Math, JSON, Reflect, Date, RegExp, Proxy],
  ...[Error, TypeError, RangeError, SyntaxError, Map, Set, WeakMap, WeakSet, Promise, ArrayBuffer, Uint8Array],
]);

for (const prototype of prototypes) {
  for (const key of Reflect.ownKeys(prototype)) {
    const { configurable, writable, enumerable, value } = getOwnPropertyDescriptor(prototype, key);
    if (!configurable || !writable) continue;
    defineProperty(prototype, key, {
      configurable,
      enumerable,
      get: () => value,
      set(assigned) {
        if (this === prototype) throw new TypeError(`${String(key)} is frozen`);
        defineProperty(this, key, { value: assigned, writable: true, enumerable: true, configurable: true });
      },
    });
  }
}
for (const value of seen) freeze(value);
