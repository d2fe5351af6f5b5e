import fc from 'fast-check';

// One seed for every run, so that a red run is the work of the change at hand. `SEED=random` looks
// for new counterexamples, `SEED=1234` repeats a run that found one.
const { SEED = '20261125' } = process.env;
if (SEED !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(SEED) });
