import { readChordName } from '../../src/music/chord/readChordName';
import { handOptions } from '../../src/playing/hand/options';
import { easiestProgression } from '../../src/playing/progression/easiestProgression';
import { targetOf } from '../../src/service/change/placing';
import { createLanguageService } from '../../src/service/languageService';
import type { EditableDocument } from '../../src/service/serviceApi';
import { DEFAULT_SETTINGS } from '../../src/service/settings';
import { songShapes, type SongShape } from '../../src/service/song/shapeSource';
import { ratios, RUNS, timed, type Bench } from './rows';

/** Milliseconds for 64 chords. */
const GOAL = 200;
const CHORDS = ['G', 'D/F#', 'Em', 'C', 'Am7', 'D7', 'Bm', 'F', 'Cadd9', 'A7sus4', 'E7', 'Gmaj7'];

const service = createLanguageService();

/** Sixteen systems of four bars, a name in each; songs have some eight different chords. */
function song(tuning: string, different: number): string {
  const rows = Array.from({ length: 16 }, (_, system) => {
    const bars = [0, 1, 2, 3].map((bar) => (CHORDS[(system * 3 + bar * 5) % different] ?? 'G').padEnd(16));
    return `chords |${bars.join('|')}|`;
  });
  return `tuning: ${tuning}\n\n${rows.join('\n\n')}\n`;
}

/** Filling 64 chords, held to the goal, and the search alone against taking each chord's easiest shape by itself. */
export const run: Bench = (report) => {
  for (const tuning of ['DADGAD', 'standard']) {
    // A document opened anew knows no shapes yet.
    const text = song(tuning, 8);
    const fresh = (): EditableDocument => service.open(text, DEFAULT_SETTINGS);
    const fillIn = (document: EditableDocument) => (): unknown =>
      service.fillChords(document, { range: undefined }, DEFAULT_SETTINGS);
    const what = `64 chords, eight of them different, ${tuning}`;
    report({ what: `${what}, first call`, runs: [timed(fillIn(fresh()))], unit: 'ms' });
    const warm = Array.from({ length: RUNS }, () => timed(fillIn(fresh())));
    report({ what: `${what}, warm, shapes looked for`, runs: warm, unit: 'ms', goal: { atMost: GOAL } });
    const document = fresh();
    fillIn(document)();
    const again = Array.from({ length: RUNS }, () => timed(fillIn(document)));
    report({ what: `${what}, warm, shapes known`, runs: again, unit: 'ms' });
    const more = service.open(song(tuning, CHORDS.length), DEFAULT_SETTINGS);
    const beats = { range: undefined, strum: 'beats' } as const;
    const runs = Array.from({ length: RUNS }, () =>
      timed(() => service.fillChords(more, beats, DEFAULT_SETTINGS)),
    );
    report({ what: `64 chords, twelve different, on every beat, ${tuning}`, runs, unit: 'ms' });
  }
  againstGreedy(report);
};

function againstGreedy(report: Parameters<Bench>[0]): void {
  const { header } = service.open(song('DADGAD', 8), DEFAULT_SETTINGS).systems[0] ?? {};
  if (!header) throw new Error('The song has no system.');
  const target = targetOf(header, DEFAULT_SETTINGS);
  const shapes = new Map<string, readonly SongShape[]>();
  for (const name of CHORDS.slice(0, 8)) {
    const read = readChordName(name);
    if (read.ok) shapes.set(name, songShapes(read.value, header, target, handOptions(), {}));
  }
  const chords = Array.from({ length: 64 }, (_, i) => ({
    shapes: shapes.get(CHORDS[(i * 5 + Math.floor(i / 4) * 3) % 8] ?? '') ?? [],
    seconds: 0.6,
  }));
  let [exact, greedy] = [0, 0];
  const exactly: number[] = [];
  const greedily: number[] = [];
  for (let i = 0; i < RUNS; i++) {
    exactly.push(timed(() => (exact = easiestProgression(chords, target, handOptions()).cost)));
    greedily.push(
      timed(() => {
        const easiest = new Map<readonly SongShape[], readonly SongShape[]>();
        for (const found of shapes.values()) {
          const [one] = easiestProgression([{ shapes: found, seconds: 0 }], target, handOptions()).chosen;
          const shape = found[one?.shape ?? 0];
          easiest.set(found, shape ? [shape] : []);
        }
        const alone = chords.map((chord) => ({ ...chord, shapes: easiest.get(chord.shapes) ?? [] }));
        greedy = easiestProgression(alone, target, handOptions()).cost;
      }),
    );
  }
  report({ what: 'the search over 64 chords alone', runs: exactly, unit: 'ms' });
  report({
    what: 'against each chord’s easiest shape by itself',
    runs: ratios(exactly, greedily),
    unit: '×',
    note: `cost ${exact.toFixed(1)} against ${greedy.toFixed(1)}`,
  });
}
