import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { FoundPassage, SoundWish } from '../../../../src/service/find/findAnswer';
import type { Range } from '../../../../src/service/records';
import { transposed } from './transposed';
import { service, settings } from '../cursor';
import { randomSong } from '../change/randomSong';

/*
 * What is to be found is common practice: a tune is known by its intervals, whatever key, tuning or capo it is played
 * in. The laws hold the search to the program's own list of notes and to its transposing, which know nothing of it.
 */

const open = (text: string) => service.open(text, settings);

function find(
  from: string,
  ranges: readonly Range[],
  text: string,
  wish: SoundWish = {},
): readonly FoundPassage[] {
  const pattern = service.soundPattern(open(from), ranges);
  assert.ok(!('error' in pattern), JSON.stringify(pattern));
  const found = service.findBySound(pattern, service.soundIndex(open(text)), wish, from === text);
  assert.ok(!('error' in found), JSON.stringify(found));
  return found;
}

const line = (at: number, start: number, end: number): Range => ({
  start: { line: at, character: start },
  end: { line: at, character: end },
});
const block = (first: number, start: number, last: number, end: number): Range => ({
  start: { line: first, character: start },
  end: { line: last, character: end },
});

/** D4 E4 G4 on one string in DADGAD. */
const TUNE = 'tuning: DADGAD\n\nD4 |0---2---5-------|\nA3 |----------------|\n';
const whole = line(2, 0, 21);

describe('finding by sound', () => {
  it('finds a tune in another tuning, on other strings, under a capo, in another key', () => {
    // G3 A3 C4 under a capo at fret 3 in standard: written E3 (string 4 fret 2), F#3 (string 4 fret 4), A3 (string 3 fret 2).
    const other = 'capo: 3\n\n[Riff]\nG3 |--------2-------|\nD3 |2---4-----------|\n';
    const [one, ...more] = find(TUNE, [whole], other);
    assert.deepEqual(more, []);
    assert.equal(one?.words, 'Riff, bar 1; standard, capo 3; 7 half steps down');
    assert.deepEqual(one.ranges, [line(4, 4, 5), line(4, 8, 9), line(3, 12, 13)]);
  });

  it('takes the highest note of each moment for the tune', () => {
    const chords = 'tuning: DADGAD\n\nD4 |0---2---5-------|\nA3 |2---0---3-------|\nD2 |0-------0-------|\n';
    assert.equal(find(TUNE, [whole], chords).length, 1);
    // The top line of a selection over several strings is looked for, too.
    assert.equal(find(chords, [block(2, 0, 4, 20)], TUNE).length, 1);
    // What lies above the tune makes another tune.
    assert.deepEqual(find(TUNE, [whole], chords.replace('A3 |2', 'A3 |9')), []);
  });

  it('finds a tune over an accompaniment only where that is asked for', () => {
    const picked = 'tuning: DADGAD\n\nD4 |0---2---5-------|\nA3 |----------------|\nD2 |--0---0---------|\n';
    assert.deepEqual(find(TUNE, [whole], picked), []);
    assert.equal(find(TUNE, [whole], picked, { over: true })[0]?.ranges.length, 3);
    // B4 between D4 and E4 is no accompaniment.
    const above = 'tuning: DADGAD\n\nD4 |0-9-2---5-------|\nA3 |----------------|\n';
    assert.deepEqual(find(TUNE, [whole], above, { over: true }), []);
  });

  it('finds another rhythm unless the same is asked for', () => {
    const slow = 'D4 |0-------2-------|5---------------|\n'.replace('D4', 'E4');
    const same = 'E4 |--0---2---5-----|\n';
    assert.equal(find(TUNE, [whole], slow).length, 1);
    assert.deepEqual(find(TUNE, [whole], slow, { rhythm: true }), []);
    assert.equal(find(TUNE, [whole], same, { rhythm: true }).length, 1);
  });

  it('finds chords as sets, whatever strings they lie on', () => {
    const from = 'tuning: DADGAD\n\nD4 |0---|\nA3 |0---|\nG3 |2---|\n'; // A3 A3 D4: the unison counts once
    const chord = block(2, 0, 4, 9);
    assert.equal(find(from, [chord], 'B3 |3---|\nG3 |2---|\n', { by: 'chords' }).length, 1);
    assert.equal(find(from, [chord], 'B3 |5---|\nG3 |4---|\n', { by: 'chords' })[0]?.halfSteps, 2);
    assert.deepEqual(find(from, [chord], 'B3 |3---|\nG3 |3---|\n', { by: 'chords' }), []);
    assert.deepEqual(find(from, [chord], 'E4 |0---|\nB3 |3---|\nG3 |2---|\n', { by: 'chords' }), []);
  });

  it('goes over bar signs and systems, and stays in one part', () => {
    const systems = 'E4 |0---2---|\n\nE4 |5-------|\n';
    assert.equal(find(TUNE, [whole], systems)[0]?.lastBar, 2);
    assert.deepEqual(find(TUNE, [whole], 'part: a\n\nE4 |0---2---|\n\npart: b\n\nE4 |5-------|\n'), []);
  });

  it('lets cents be, and takes quarter tones for other notes', () => {
    const sweet = (cents: string) =>
      `tuning: E2 B2 E3 G#3${cents} B3 E4\n\nB3  |--------4-------|\nG#3 |2---4-----------|\n`;
    // A#3 C4 D#4
    assert.equal(find(TUNE, [whole], sweet('-14c')).length, 1);
    assert.deepEqual(find(TUNE, [whole], sweet('-50c')), []);
  });

  it('looks for the selected columns on the selected strings, and leaves that very passage out', () => {
    const text = 'E4 |0---2---3---|0---2---3---|\nB3 |1---1---1---|1---1---1---|\n';
    const firstTwo = line(0, 3, 10);
    const pattern = service.soundPattern(open(text), [firstTwo]);
    assert.ok(!('error' in pattern));
    assert.deepEqual([pattern.name, pattern.together], ['E4 F#4', false]);
    assert.deepEqual(
      find(text, [firstTwo], text).map(({ firstBar, halfSteps }) => [firstBar, halfSteps]),
      [[2, 0]],
    );
    // A column selection is one range a line; drawn from below it is the same.
    const columns = [line(1, 4, 9), line(0, 4, 9)];
    const block = service.soundPattern(open(text), columns);
    assert.ok(!('error' in block));
    assert.deepEqual(block.moments, [
      [60, 64],
      [60, 66],
    ]);
  });

  it('says in a sentence what to select', () => {
    const pattern = (text: string, range: Range) => service.soundPattern(open(text), [range]);
    assert.match(JSON.stringify(pattern(TUNE, line(2, 4, 4))), /Select the notes to look for/);
    const parts = 'part: a\n\nE4 |0---|\n\npart: b\n\nE4 |5---|\n';
    assert.match(JSON.stringify(pattern(parts, block(0, 0, 6, 8))), /notes of one part/);
    const single = pattern(TUNE, line(2, 4, 5));
    assert.ok(!('error' in single));
    const index = service.soundIndex(open(TUNE));
    assert.match(JSON.stringify(service.findBySound(single, index, {})), /two notes or more/);
    assert.match(JSON.stringify(service.findBySound(single, index, { by: 'chords' })), /everywhere/);
  });

  it('reads a tune that is typed, each note near the one before', () => {
    const typed = service.typedPattern('B3 C, E');
    assert.ok(!('error' in typed));
    assert.deepEqual(typed.moments, [[59], [60], [64]]);
    assert.match(JSON.stringify(service.typedPattern('H3 C4')), /“H3” is no note/);
    assert.match(JSON.stringify(service.typedPattern('C4')), /two or more/);
    assert.match(JSON.stringify(service.findBySound(typed, { tracks: [] }, { rhythm: true })), /no rhythm/);
  });

  it('finds exactly what a search of its own over the list of notes finds', () => {
    fc.assert(
      fc.property(
        randomSong,
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 2, max: 4 }),
        (text, from, count) => {
          const tops = topLines(text);
          const line = tops.flat().slice(from, from + count);
          if (line.length < 2) return;
          const pattern = {
            moments: line.map(({ midi }) => [midi]),
            onsets: undefined,
            together: false,
            name: '',
            places: [],
          };
          const found = service.findBySound(pattern, service.soundIndex(open(text)), {});
          assert.ok(!('error' in found));
          const starts = tops.flatMap((part) =>
            part.filter((_, i) =>
              line.every(
                ({ midi }, k) =>
                  Math.round((part[i + k]?.midi ?? NaN) - (part[i]?.midi ?? NaN)) ===
                  Math.round(midi - (line[0]?.midi ?? NaN)),
              ),
            ),
          );
          assert.equal(found.length, starts.length, text);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('finds every tune again at its distance after the piece was transposed', () => {
    fc.assert(
      fc.property(randomSong, fc.constantFrom(1, 2, 3), (text, by) => {
        const moved = transposed(text, by);
        const [line] = topLines(text).filter((part) => part.length > 2);
        if (moved === undefined || !line) return;
        const pattern = {
          moments: line.slice(0, 3).map(({ midi }) => [midi]),
          onsets: undefined,
          together: false,
          name: '',
          places: [],
        };
        const found = service.findBySound(pattern, service.soundIndex(open(moved)), {});
        assert.ok(!('error' in found));
        assert.ok(
          found.some(({ halfSteps }) => halfSteps === by),
          `${text}\n${moved}`,
        );
      }),
      { numRuns: 6 },
    );
  });
});

/** The highest note that begins at each time, part by part, from the list of notes. */
function topLines(text: string): readonly (readonly { midi: number }[])[] {
  const parts = new Map<string | null, Map<number, number>>();
  for (const { part, onset, midi, techniques } of service.notes(open(text))) {
    if (midi === null) continue;
    const sounds = techniques.find(({ sign }) => sign.startsWith('pb'))?.to ?? midi;
    const times = parts.get(part) ?? new Map<number, number>();
    parts.set(part, times);
    times.set(onset, Math.max(times.get(onset) ?? -Infinity, sounds));
  }
  return [...parts.values()].map((times) =>
    [...times].sort(([a], [b]) => a - b).map(([, midi]) => ({ midi })),
  );
}
