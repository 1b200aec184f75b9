import { readTimes, type TimeInput } from '../../src/notation/time/timeInput';
import { RUNS, timed, type Row } from './rows';

/** A system of eight bars of 4/4, 17 or 21 columns each, one of them padding, one of a second digit. */
function inferredSystem(even: boolean): TimeInput {
  const bars: { start: number; end: number }[] = [];
  const onsets: number[] = [];
  const seconds = new Set<number>();
  for (let bar = 0; bar < 8; bar++) {
    const start = 1 + bar * (even ? 18 : 22);
    bars.push({ start, end: start + (even ? 17 : 21) });
    for (let i = 0; i < 8; i++) onsets.push(start + 1 + i * 2);
    seconds.add(start + 4);
  }
  return {
    meter: { upper: 4, lower: 4 },
    bars,
    onsets,
    onsetEnds: onsets.map((onset) => (seconds.has(onset + 1) ? onset + 1 : onset)),
    secondDigits: seconds,
    count: undefined,
    firstInPart: true,
    firstInSection: true,
  };
}

function countedSystem(): TimeInput {
  const system = inferredSystem(true);
  const count = system.bars.flatMap(({ start }) =>
    ['1', '&', '2', '&', '3', '&', '4', '&'].map((text, i) => ({
      text,
      column: start + 1 + i * 2,
      width: 1,
    })),
  );
  return { ...system, count };
}

const ROUNDS = 10_000;

/** Microseconds a reading, once V8 is warm. */
function measure(input: TimeInput): number[] {
  const all = (): void => {
    for (let i = 0; i < ROUNDS; i++) readTimes(input);
  };
  all();
  return Array.from({ length: RUNS }, () => (timed(all) * 1000) / ROUNDS);
}

/** What it costs to give every column of a system of eight bars its time; a key pays it once. */
export function run(report: (row: Row) => void): void {
  const systems = [
    ['inferred, even', inferredSystem(true)],
    ['inferred, uneven', inferredSystem(false)],
    ['counted', countedSystem()],
  ] as const;
  for (const [name, input] of systems) {
    const note = `${input.onsets.length} onsets`;
    report({ what: `times of a system, ${name}`, runs: measure(input), unit: 'µs', note });
  }
}
