import assert from 'node:assert/strict';
import fc from 'fast-check';
import { handOptions, playPassage, type HandAnswer } from '../../../../src/playing/hand/handSearch';
import { guitar, note, OPENS, targetOf } from '../boards';
import { Oracle, type Option } from './handOracle';
import { cases, passageOf } from './randomPassages';

const standard = targetOf(guitar(OPENS.standard));

/** Four bars of eighths in D major: a tune of our own. */
const TUNE = [
  62, 64, 66, 69, 67, 66, 64, 62, 61, 64, 67, 69, 71, 69, 66, 64, 62, 66, 69, 74, 73, 71, 69, 67, 66, 64, 62,
  61, 62, 66, 64, 62,
];
const NOTES = TUNE.map((midi, id) => note(id, midi, id / 2, { end: id / 2 + 0.5 }));
const barOf = (id: number): number => Math.floor(id / 8);

function placesOf({ placements }: HandAnswer): Map<number, string> {
  return new Map(placements.map(({ id, string, fret }) => [id, `${string}:${fret}`]));
}

/** Bars at whose every stopped note, stopped in both, the index stands elsewhere, with a note in another place. */
function barsApart(a: HandAnswer, b: HandAnswer): number[] {
  const [here, there] = [placesOf(a), placesOf(b)];
  return [0, 1, 2, 3].filter((bar) => {
    const ids = NOTES.map(({ id }) => id).filter((id) => barOf(id) === bar);
    const stopped = ids.filter((id) => a.fingers.get(id) !== 0 && b.fingers.get(id) !== 0);
    const moved = stopped.every((id) => a.positions.get(id) !== b.positions.get(id));
    return moved && ids.some((id) => here.get(id) !== there.get(id));
  });
}

describe('alternatives', () => {
  it('are the next best answers that play some bar in another position', () => {
    for (const objective of ['total', 'hardest'] as const) {
      const answers = playPassage(NOTES, standard, handOptions({ alternatives: 3, barOf, objective }));
      // As easy in the hardest step as the first there are but two.
      assert.equal(answers.length, objective === 'total' ? 3 : 2);
      const [a, b, c = b] = answers;
      assert.ok(a && b && c);
      assert.ok(a.cost <= b.cost && b.cost <= c.cost);
      const pairs = [[a, b], [a, c], ...(b === c ? [] : [[b, c]])];
      for (const [one, other] of pairs) assert.ok(one && other && barsApart(one, other).length > 0);
    }
  });

  it('the second is the cheapest of all that differ so: brute force over 200 small passages of one bar', function () {
    this.timeout(120_000);
    let found = 0;
    fc.assert(
      fc.property(cases, ({ hand, notes }) => {
        const { openStrings, thumb, secondsPerQuarter } = hand;
        const target = targetOf(
          { opens: hand.opens, frets: hand.frets, scaleLength: hand.length },
          { slide: hand.slide },
        );
        const options = handOptions({ openStrings, thumb, secondsPerQuarter, alternatives: 2 });
        const [first, second] = playPassage(passageOf(notes), target, options);
        assert.ok(first);
        // Equal pitches that change places are no other answer.
        const twins = notes.some((n, i) =>
          notes.some((m, j) => j < i && n.midi === m.midi && n.onset === m.onset),
        );
        fc.pre(!twins);
        fc.pre(
          first.unplaced.length === 0 &&
            notes.every((n) => n.joinedTo === undefined && n.end === n.onset + 1),
        );
        const least = leastUnlike(new Oracle(notes, hand), first);
        assert.equal(second === undefined, least === Infinity);
        if (!second) return;
        found++;
        assert.ok(Math.abs(second.cost - least) < 1e-4, `${second.cost}, brute force ${least}`);
      }),
      { numRuns: 200, seed: 20261125 },
    );
    assert.ok(found > 60, `only ${found} with a second answer`);
  });

  it('are fewer where a passage can be played in one way only', () => {
    const low = [40, 41, 42].map((midi, id) => note(id, midi, id));
    assert.equal(playPassage(low, standard, handOptions({ alternatives: 3 })).length, 1);
  });
});

/** The least cost of all ways that, wherever a finger is down in both, have another position, and a note elsewhere. */
function leastUnlike(oracle: Oracle, first: HandAnswer): number {
  const places = placesOf(first);
  const strings = oracle.hand.opens.length;
  let least = Infinity;
  const go = (m: number, before: Option | undefined, sum: number, apart: boolean): void => {
    if (sum >= least) return;
    if (m === oracle.onsets.length) {
      if (apart) least = sum;
      return;
    }
    const own = oracle.notes.filter((n) => n.onset === oracle.onsets[m]);
    const stopped = own.some((n) => first.fingers.get(n.id) !== 0);
    for (const option of oracle.options[m] ?? []) {
      if (option.leftOut.length > 0) continue;
      const down = option.held.some((h) => h.fret > 0);
      if (stopped && down && option.at === first.positions.get(own[0]?.id ?? -1)) continue;
      const move = before ? oracle.move(m, before, option) : 0;
      if (move === undefined) continue;
      const moved = own.some((n) => {
        const held = option.held.find((h) => oracle.notes[h.note] === n);
        return held !== undefined && places.get(n.id) !== `${strings - held.s}:${held.fret}`;
      });
      go(m + 1, option, sum + move + option.cost, apart || moved);
    }
  };
  go(0, undefined, 0, false);
  return least;
}
