import fc from 'fast-check';

/*
 * Random cases are the same in every run, so that a run that was green stays green; `PEGBOX_SEED=7 npm test` tries
 * others. Loaded by mocha before all tests.
 */
fc.configureGlobal({ seed: Number(process.env['PEGBOX_SEED'] ?? 20_261_125) });
