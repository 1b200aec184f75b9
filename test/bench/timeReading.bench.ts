import { readTimes, type TimeInput } from '../../src/notation/time/timeInput';

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

function measure(name: string, input: TimeInput): void {
  let sum = 0;
  for (let i = 0; i < 20_000; i++) sum += readTimes(input).columnTimes.length;
  const rounds = 20_000;
  const begun = performance.now();
  for (let i = 0; i < rounds; i++) sum += readTimes(input).columnTimes.length;
  const micros = ((performance.now() - begun) * 1000) / rounds;
  console.log(`readTimes, ${name}: ${micros.toFixed(1)} µs (${sum > 0 ? input.onsets.length : 0} onsets)`);
}

/** Prints the time that one reading of a system takes once V8 is warm. */
export async function run(): Promise<void> {
  measure('inferred, even', inferredSystem(true));
  measure('inferred, uneven', inferredSystem(false));
  measure('counted', countedSystem());
  await Promise.resolve();
}
