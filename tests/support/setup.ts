// Node 20 writes out the stack of every InputError as the getter takes its place, and vitest maps each frame to its
// source: a fifth of the time of a test of wrong inputs. That text is never read; what the getter gives is mapped.
type Write = NonNullable<ErrorConstructor['prepareStackTrace']> & { readonly skips?: true };

const write = Error.prepareStackTrace as Write | undefined;
if (write && !write.skips) {
  const skipping: Write = (error, frames) =>
    error instanceof Error && error.name === 'InputError' ? '' : (write(error, frames) as unknown);
  Error.prepareStackTrace = Object.assign(skipping, { skips: true as const });
}
