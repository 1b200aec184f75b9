import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { backThroughStops, throughStops } from '../../../../src/service/reading/stops';
import type { EditableDocument } from '../../../../src/service/serviceApi';
import { service, settings } from '../cursor';

const open = (text: string): EditableDocument => service.open(text, settings);

function named(text: string, octaves = false): string {
  return service.noteNames(open(text), { octaves }).text;
}

describe('note names in place of frets', () => {
  // Fret by half steps from the open string (equal temperament, twelve to the octave), worked out by hand.
  const cases: readonly (readonly [what: string, tab: string, names: string])[] = [
    ['a name of one letter keeps the columns', 'E4 |0-3-|\nB3 |1---|\n', 'E4 |E-G-|\nB3 |C---|\n'],
    [
      'a wider name widens every line, rows and bar signs as well',
      'chords |D   |A   |\nE4     |2-3-|0---|\nB3     |--5-|2---|\n',
      'chords |D    |A    |\nE4     |F#-G-|E----|\nB3     |---E-|C#---|\n',
    ],
    ['a narrower name keeps its columns', 'E4 |12-10-|\nB3 |-----|\n', 'E4 |E--D--|\nB3 |-----|\n'],
    ['two wide names in one column widen it once', 'E4 |2---|\nB3 |2---|\n', 'E4 |F#---|\nB3 |C#---|\n'],
    ['joined notes stay joined', 'E4 |0h2p0/5-|\n', 'E4 |EhF#pE/A-|\n'],
    [
      'a bend names where it goes, and no b stands beside a flat',
      'key: F\n\nB3 |11b13r11-|\n',
      'key: F\n\nB3 |Bb^C-rBb-|\n',
    ],
    ['a bend by half a step', 'key: A\n\nE4 |3b1/2-|\n', 'key: A\n\nE4 |G^G#--|\n'],
    ['a bend between two names', 'E4 |3b1/4-|\n', 'E4 |G^G+--|\n'],
    ['a trill', 'E4 |3tr5-|\n', 'E4 |GtrA-|\n'],
    ['ghosts, muted strokes and stops', 'E4 |(3)-x.-|\n', 'E4 |(G)-x.-|\n'],
    ['a natural harmonic sounds an octave up at 12', 'E4 |<12>-|\n', 'E4 |<E>--|\n'],
    ['an artificial one at the octave of its stop', 'E4 |3<15>-|\n', 'E4 |<G>---|\n'],
    [
      'a full capo: what sounds, and that is said',
      'capo: 2\n\nE4 |0---|\n',
      'capo: 2   (the names are those that sound)\n\nE4 |F#---|\n',
    ],
    ['the key spells', 'key: Ab\n\nE4 |4---|\n', 'key: Ab\n\nE4 |Ab---|\n'],
    [
      'prose, comments and remarks stay',
      'Play 12.\n# 3\nE4 |3---| x2 at 5\n',
      'Play 12.\n# 3\nE4 |G---| x2 at 5\n',
    ],
    [
      'a count moves syllable by syllable, covers stay as long as their notes',
      'count |1e&a|\nPM    |----|\nE4    |2-2-|\nB3    |-2-2|\n',
      'count |1 e & a |\nPM    |--------|\nE4    |F#--F#--|\nB3    |--C#--C#|\n',
    ],
  ];
  for (const [what, tab, names] of cases) it(what, () => assert.equal(named(tab), names));

  it('with octaves', () => assert.equal(named('E4 |2-3-|\n', true), 'E4 |F#4-G4-|\n'));
});

const folder = path.resolve(__dirname, '../../../../media/demo');

for (const song of readdirSync(folder).filter((name) => name.endsWith('.pegbox'))) {
  describe(`the names of ${song}`, () => {
    const document = open(readFileSync(path.join(folder, song), 'utf8'));
    for (const octaves of [false, true]) {
      const { text, lines } = service.noteNames(document, { octaves });
      const after = text.split('\n');
      const stopsOf = new Map(lines.map(({ line, stops }) => [line, stops]));

      it(`stand where the places lead${octaves ? ', with octaves' : ''}, and notes of one column share one`, () => {
        const columns = new Map<string, Set<number>>();
        for (const system of document.systems)
          for (const note of system.reading.notes) {
            const line = system.firstLine + note.line;
            const at = throughStops(stopsOf.get(line) ?? [], note.numberStart);
            const [pitch] = note.pitches;
            const entry = service
              .notes(document)
              .find((one) => one.line === line + 1 && one.column === note.start + 1);
            if (!pitch || !entry) continue;
            const name = octaves ? entry.name : entry.name.replace(/-?\d+$/, '');
            assert.ok(
              after[line]?.slice(at).replace(/^</, '').startsWith(name),
              `${after[line] ?? ''} ${at}`,
            );
            const key = `${system.firstLine} ${note.column}`;
            const shared = columns.get(key) ?? new Set();
            columns.set(key, shared.add(throughStops(stopsOf.get(line) ?? [], note.start)));
          }
        assert.ok(columns.size > 20);
        for (const [key, shared] of columns) assert.equal(shared.size, 1, key);
      });

      it(`lead back to every character${octaves ? ', with octaves' : ''}`, () => {
        for (let line = 0; line < document.lineCount; line++) {
          const before = document.line(line).text;
          const stops = stopsOf.get(line) ?? [];
          let last = -1;
          for (let at = 0; at <= before.length; at++) {
            const there = throughStops(stops, at);
            assert.ok(there >= last && there <= (after[line]?.length ?? 0), `${line}:${at}`);
            last = there;
            const back = backThroughStops(stops, there);
            // A fret of two digits may have become a name of one letter: then both lead to it.
            assert.ok(
              back === at || throughStops(stops, back) === there,
              `${line}:${at} came back as ${back}`,
            );
          }
        }
      });
    }

    it('bar signs still stand under each other', () => {
      const { text } = service.noteNames(document);
      const after = text.split('\n');
      for (const { firstLine, reading } of document.systems) {
        const signs = reading.strings.map(({ line }) =>
          [...(after[firstLine + line] ?? '').matchAll(/:?\|+/g)].map(({ index }) => index),
        );
        for (const own of signs) assert.deepEqual(own, signs[0]);
      }
    });
  });
}
