import fc from 'fast-check';

// One counterexample is enough to kill a mutant.
fc.configureGlobal({ endOnFailure: true });
