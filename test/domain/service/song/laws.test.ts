import assert from 'node:assert/strict';
import fc from 'fast-check';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { compareChord } from '../../../../src/music/chord/compareChord';
import { equal } from '../../../../src/music/fraction';
import { playedContext } from '../../../../src/notation/chordContext';
import { capoShift } from '../../../../src/notation/headerViews';
import type { RowLine } from '../../../../src/notation/parsedLine';
import type { System } from '../../../../src/notation/tabDocument';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { soundingAt } from '../../../../src/service/sounding';
import { fill, opened, second, service } from './song';

/*
 * Laws of filling: what sounds at a name is the chord named, with what rings on from before it; it begins when the row
 * says; nothing else of the text changes. Chords are compared by music/chord/compareChord, which the finder of shapes
 * does not use.
 */

const NAMES = [
  'G',
  'C',
  'D7',
  'Em',
  'Am7',
  'D/F#',
  'Bm',
  'F',
  'Cmaj7',
  'Gsus4',
  'A5',
  'E',
  'Bb',
  'F#m',
  'Dadd9',
  'N.C.',
];

/** Bars of even columns, each with one or two names on beats. */
const bar = fc
  .record({
    per: fc.constantFrom(2, 3, 4),
    first: fc.constantFrom(...NAMES),
    next: fc.option(fc.record({ name: fc.constantFrom(...NAMES), beat: fc.constantFrom(2, 3) }), {
      nil: undefined,
    }),
  })
  .map(({ per, first, next }) => {
    const columns = per * 4;
    const room = next && next.beat * per - first.length > 0 && columns - next.beat * per > next.name.length;
    return (next && room ? first.padEnd(next.beat * per) + next.name : first)
      .padEnd(columns)
      .slice(0, Math.max(columns, first.length));
  })
  .filter((text) => /^\S+\s|^\S{1,5}$/.test(text));

const song = fc
  .record({
    fields: fc.constantFrom(
      '',
      'tuning: DADGAD\n',
      'tuning: open G\ncapo: 2\n',
      'tuning: open D\nkey: D\n',
      'instrument: ukulele\n',
      'capo: 3\n',
      'capo: 2 on 5 4 3\n',
      'instrument: mandolin\n',
      'instrument: banjo\n',
    ),
    systems: fc.array(fc.array(bar, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 }),
    words: fc.boolean(),
    strum: fc.constantFrom('once' as const, 'beats' as const),
    style: fc.constantFrom('full' as const, 'full' as const, 'small' as const),
  })
  .map(({ fields, systems, words, ...wishes }) => {
    const lines = systems.map((bars) => {
      const chords = `chords |${bars.join('|')}|`;
      return words ? `${chords}\nwords  |${bars.map((one) => 'row'.padEnd(one.length)).join('|')}|` : chords;
    });
    return { text: `${fields}\n[Verse]\n${lines.join('\n\n')}\n\nProse that stays.\n`, wishes };
  });

const chordsRow = (system: System | undefined): RowLine | undefined =>
  system?.lines.find((line): line is RowLine => line.kind === 'row' && line.row === 'chords');

/** Names that the report tells as left empty. */
function leftEmpty(remarks: readonly string[]): Set<string> {
  return new Set(remarks.flatMap((remark) => /: (\S+) is left empty: /.exec(remark)?.[1] ?? []));
}

describe('laws of filling a song', () => {
  it('what sounds at each name is its chord, at its exact time; all else stays; once is enough', function () {
    this.timeout(240_000);
    let compared = 0;
    let stopped = 0;
    fc.assert(
      fc.property(song, ({ text, wishes }) => {
        const before = opened(text);
        const { text: filled, report, edits } = fill(text, wishes);
        assert.ok(edits <= 1);
        const after = opened(filled);
        assert.equal(after.systems.length, before.systems.length);
        const empty = leftEmpty(report.remarks);
        before.systems.forEach((system, at) => {
          const now = after.systems[at];
          assert.ok(now);
          const [was, is] = [system, now].map(({ reading }) =>
            reading.rows.find(({ row }) => row === 'chords'),
          );
          assert.deepEqual(
            is?.marks.map((mark) => mark.text),
            was?.marks.map((mark) => mark.text),
          );
          was?.marks.forEach((mark, i) => {
            const placed = is?.marks[i];
            assert.ok(
              placed && equal(placed.onset, mark.onset),
              `${mark.text} begins when it did\n${filled}`,
            );
            const read = readChordName(mark.text);
            assert.ok(read.ok);
            const sounding = soundingAt(after, now, mark.onset);
            const struck = sounding.filter(({ begins }) => begins);
            if (!read.value.root) {
              assert.equal(
                sounding.flatMap(({ midis }) => midis).length,
                0,
                `silence at ${mark.text}\n${filled}`,
              );
              return;
            }
            if (empty.has(mark.text)) return;
            const own = struck.flatMap(({ midis }) => midis);
            assert.ok(own.length > 0, `${mark.text} sounds\n${filled}`);
            const shift = capoShift(now.header);
            const context = playedContext(now.header);
            for (const midis of [own, sounding.flatMap((one) => one.midis)]) {
              const { verdict, message } = compareChord(
                read.value,
                midis.map((midi) => midi - shift),
                context,
              );
              assert.equal(verdict, 'agrees', `${message}\n${filled}`);
            }
            const { bass } = read.value;
            if (bass) compared++;
          });
          const otherRows = (one: System): string[] =>
            one.lines.flatMap((line) =>
              line.kind === 'row' && line.row !== 'count'
                ? [`${line.word} ${line.marks.map((m) => m.text).join(' ')}`]
                : [],
            );
          assert.deepEqual(otherRows(now), otherRows(system));
        });
        const outside = (lines: string): string[] =>
          lines
            .split('\n')
            .filter((line) => !/^(?:chords|words|count)\b|^[A-Ga-g][#b]?\d?(?:\/\S+)? *\|/.test(line));
        assert.deepEqual(outside(filled), outside(text));
        if (report.remarks.some((remark) => remark.startsWith('A dot'))) stopped++;
        assert.equal(fill(filled, wishes).edits, 0);
        // What the checks find of chords in it, they found before: nothing.
        const told = service.diagnostics(after, DEFAULT_SETTINGS).filter(({ code, range }) => {
          const name = after.line(range.start.line).text.slice(range.start.character, range.end.character);
          return /^chord-/.test(code) && !empty.has(name);
        });
        assert.deepEqual(told, [], filled);
      }),
      { numRuns: 60, seed: 20261127 },
    );
    assert.ok(compared > 5 && stopped > 10, `${compared} with a bass, ${stopped} with dots`);
  });

  it('a second guitar has the same chords at the same times under the same bars', function () {
    this.timeout(240_000);
    fc.assert(
      fc.property(song, fc.constantFrom(undefined, '5', 'none'), ({ text, wishes }, capo) => {
        fc.pre(!text.includes(' on 5 4 3') && !(capo === '5' && text.includes('banjo')));
        const before = opened(text);
        const { text: written, report } = second(text, {
          name: 'other',
          strum: wishes.strum,
          ...(capo && { capo }),
        });
        const after = opened(written);
        const own = after.systems.filter(({ header }) => header.part === 'other');
        assert.equal(own.length, before.systems.length, written);
        assert.equal(after.parts.length, 2);
        const empty = leftEmpty(report.remarks);
        before.systems.forEach((system, at) => {
          const now = own[at];
          assert.ok(now);
          const [was, is] = [system, now].map(({ reading }) =>
            reading.rows.find(({ row }) => row === 'chords'),
          );
          const names = chordsRow(now)?.marks ?? [];
          was?.marks.forEach((mark, i) => {
            const placed = is?.marks[i];
            assert.ok(placed && equal(placed.onset, mark.onset), written);
            const [old, read] = [readChordName(mark.text), readChordName(names[i]?.text ?? '')];
            assert.ok(old.ok && read.ok);
            if (!read.value.root || empty.has(read.value.text)) return;
            const midis = soundingAt(after, now, mark.onset).flatMap((one) => one.midis);
            // The same chord sounds, by either name under its own capo.
            for (const [chord, header] of [
              [old.value, system.header],
              [read.value, now.header],
            ] as const) {
              const shift = capoShift(header);
              const { verdict, message } = compareChord(
                chord,
                midis.map((midi) => midi - shift),
                playedContext(header),
              );
              assert.equal(verdict, 'agrees', `${message}\n${written}`);
            }
          });
        });
        const still = after.systems.filter(({ header }) => header.part !== 'other');
        assert.deepEqual(
          still.map(({ lines }) => lines.map((line) => line.text)),
          before.systems.map(({ lines }) => lines.map((line) => line.text)),
        );
      }),
      { numRuns: 30, seed: 20261127 },
    );
  });
});
