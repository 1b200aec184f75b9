import { GUITAR } from '../../src/instrument/instruments';
import { findTuning } from '../../src/instrument/tunings';
import { handOptions } from '../../src/playing/hand/handSearch';
import { suit, type SuitAnswer, type SuitRequest } from '../../src/playing/suit/suit';
import { sixteenBars } from '../domain/playing/suit/passages';
import type { Bench } from './rows';

const WARM_RUNS = 5;

function requestOf(within: number): SuitRequest {
  const standard = findTuning('standard', GUITAR);
  if (!standard) throw new Error('The guitar has no standard tuning.');
  return {
    notes: sixteenBars(),
    start: { strings: standard.strings, name: standard.name, text: standard.name },
    instrument: GUITAR,
    target: { frets: 22, capo: undefined, scaleLength: 648, reach: 130, slide: false },
    options: handOptions(),
    within,
    anyKey: false,
    keep: 10,
    // As many as there are: what a string bears would take some away.
    limits: () => true,
  };
}

interface Timed {
  readonly answer: SuitAnswer;
  /** Milliseconds of the named tunings, and of all. */
  readonly named: number;
  readonly all: number;
  /** The longest wait between two calls, milliseconds. */
  readonly longest: number;
}

function timedSuit(request: SuitRequest): Timed {
  const start = performance.now();
  const search = suit(request);
  let named = 0;
  let longest = 0;
  for (;;) {
    const before = performance.now();
    const step = search.next();
    const now = performance.now();
    longest = Math.max(longest, now - before);
    if (step.done) return { answer: step.value, named, all: now - start, longest };
    if (step.value.phase === 'named') named = now - start;
  }
}

function shares({ evaluated, unplayable, ruledOut, total }: SuitAnswer): string {
  const share = (count: number): string => `${count} (${((100 * count) / total).toFixed(0)} %)`;
  return `of ${total}: searched ${share(evaluated)}, unplayable ${share(unplayable)}, ruled out by the bound ${share(ruledOut)}`;
}

/** Which tuning suits: sixteen bars of two voices, the named tunings of the guitar and all retunings of its strings. */
export const run: Bench = (report) => {
  const few = requestOf(0);
  const first = timedSuit(few);
  const count = first.answer.named.length;
  const what = `${count} named tunings, 16 bars of two voices`;
  report({ what: `${what}, first call`, runs: [first.named], unit: 'ms', goal: { atMost: 1000 } });
  const warm = Array.from({ length: WARM_RUNS }, () => timedSuit(few).named);
  report({ what: `${what}, warm`, runs: warm, unit: 'ms', goal: { atMost: 250 } });
  const two = timedSuit(requestOf(2));
  report({
    what: 'retunings within two half steps, ten best, proved',
    runs: [two.all],
    unit: 'ms',
    goal: { atMost: 10_000 },
    note: shares(two.answer),
  });
  report({
    what: 'longest slice of it: a cancel waits no longer',
    runs: [two.longest],
    unit: 'ms',
    goal: { atMost: 100 },
  });
  const three = timedSuit(requestOf(3));
  report({
    what: 'retunings within three half steps, ten best, proved',
    runs: [three.all],
    unit: 'ms',
    goal: { atMost: 30_000 },
    note: shares(three.answer),
  });
};
