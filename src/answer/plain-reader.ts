import { FieldReader } from './field-reader.js';
import { describe } from './issues.js';
import type { Asked } from './needs.js';
import { plainCopy } from './plain-copy.js';

/** A {@link FieldReader} that takes answers too. */
export class PlainReader extends FieldReader {
  /** Says that a field that was read is missing. */
  missing(name: string, expected: Asked): void {
    if (this.source) this.report('missing', name, expected);
  }

  /** A value of any kind as plain JSON of its own: no object of yours is kept or run later. */
  anything(name: string, expected: Asked, optional = false): unknown {
    const value = this.read(name);
    if (value === undefined) {
      if (!optional) this.missing(name, expected);
      return undefined;
    }
    let copy: unknown;
    try {
      copy = plainCopy(value);
    } catch {
      this.report('unreadable', name, expected, 'an error');
      return undefined;
    }
    if (copy === undefined) this.report('wrong-type', name, expected, describe(value));
    return copy;
  }
}
