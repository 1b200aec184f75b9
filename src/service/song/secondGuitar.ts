import { readChordName } from '../../music/chord/readChordName';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import type { TabDocument } from '../../notation/tabDocument';
import { cannotBeWritten } from '../change/change';
import { goalOf } from '../change/convertGoal';
import { nameTrouble, withNewPart } from '../change/newPart';
import { capoWords } from '../change/remarks';
import type { Settings } from '../records';
import type { ChangeResult } from '../serviceApi';
import { chordSystems, type ChordEvent, type ChordSystem } from './chordEvents';
import { chooseShapes, type PlayedSong } from './chooseShapes';
import { chordsBySystem, NO_NAMES } from './fillChords';
import { emptyChords, guessedTimes } from './fillRemarks';
import { filledSystems } from './filledSystems';
import { firstPlayer } from './firstPlayer';
import { overlapCost, pitchesOf, type Side } from './register';
import { overlapRemarks } from './registerWords';
import type { SecondGuitarRequest } from './songAnswer';
import { wishTrouble } from './wishTrouble';

/** Rows that speak of the chords and bars, and not of the first player's notes or the singer's words. */
const KEPT: ReadonlySet<string> = new Set(['chords', 'count', 'ending']);
/** A second player goes farther up the neck than the first, where nothing is said. */
const HIGHEST = 15;

/**
 * A part of its own for a second player: the same chords in shapes that stay out of what the first one sounds, in the
 * same tuning and capo or in others. The first one's notes are those of the text where there is tab, else those of the
 * shapes that filling would write.
 */
export function secondGuitar(
  document: TabDocument,
  request: SecondGuitarRequest,
  settings: Settings,
): ChangeResult {
  const trouble = wishTrouble(request);
  if (trouble !== undefined) return { error: trouble };
  const systems = chordSystems(document, request.range);
  const [part, ...others] = [...new Set(systems.map(({ slice }) => slice.system.header.part))];
  if (systems.length === 0) return { error: NO_NAMES };
  const name = request.name.trim();
  const unfit = nameTrouble(document, name, others.length + 1);
  if (unfit) return { error: unfit };
  const whole = document.systems.filter(
    ({ header, reading }) => header.part === part && reading.bars.length > 0,
  );
  const { tuning, capo } = request;
  const asked = {
    range: request.range,
    ...(tuning !== undefined && { tuning }),
    ...(capo !== undefined && { capo }),
  };
  const slices = whole.map((system) => ({
    system,
    index: document.systems.indexOf(system),
    firstBar: 0,
    lastBar: system.reading.bars.length - 1,
  }));
  const goal = goalOf(slices, asked, settings);
  if ('error' in goal) return goal;
  const first = firstPlayer(document, systems, request, settings);
  const keeping = (side: Side): PlayedSong =>
    chooseShapes(systems, {
      document,
      wishes: { highestFret: HIGHEST, ...request },
      settings,
      headerFor: goal.headerFor,
      anyStyle: request.style === undefined,
      rename: renamed,
      // Low on the neck is where the first player is.
      anywhere: true,
      extra: (event, system, shape) =>
        overlapCost(pitchesOf(shape, goal.headerFor(system.header)), first(system, event), side),
    });
  const [above, below] = [keeping('above'), keeping('below')];
  const side = above.cost <= below.cost ? 'above' : 'below';
  const { played } = side === 'above' ? above : below;
  const filled = filledSystems({
    document,
    systems: whole,
    chordsOf: chordsBySystem(played),
    headerFor: ({ header }) => goal.headerFor(header),
    strum: request.strum ?? 'once',
    keeps: ({ row }) => KEPT.has(row),
    rewrite: (system, row, mark) =>
      row.row === 'chords' ? renamedText(mark.text, system.header, goal.headerFor(system.header)) : mark.text,
    joins: false,
    empty: true,
  });
  const [lost] = filled.unwritten;
  if (lost) return { error: cannotBeWritten(document.placeOf(lost).firstBar) };
  const replacements = whole.flatMap((system) => {
    const block = filled.blocks.get(system);
    return block ? [{ system, blocks: [block] }] : [];
  });
  const { edits, remark } = withNewPart(document, part, name, replacements, settings);
  const sounding = played.filter((chord) => chord.played);
  const remarks = [
    ...overlapRemarks(sounding, first, side),
    remark,
    ...emptyChords(played, document),
    ...guessedTimes(played, document),
    ...namesRemark(systems, goal.headerFor),
    ...goal.cautions,
  ];
  const cautions = goal.cautions.length > 0 ? { cautions: goal.cautions } : {};
  return { edits, report: { notesIn: 0, kept: 0, moved: 0, unplaced: [], remarks, ...cautions } };
}

function renamed(event: ChordEvent, before: Header, after: Header): ChordEvent {
  const text = renamedText(event.mark.text, before, after);
  if (text === event.mark.text) return event;
  const read = readChordName(text);
  return { ...event, mark: { ...event.mark, text }, chord: read.ok ? read.value : event.chord };
}

/** A chord's name as played under another capo. */
function renamedText(text: string, before: Header, after: Header): string {
  const by = capoShift(before) - capoShift(after);
  return by === 0 ? text : transposeWrittenChord(text, by, after.key);
}

function namesRemark(systems: readonly ChordSystem[], headerFor: (header: Header) => Header): string[] {
  const header = systems[0]?.slice.system.header;
  if (!header) return [];
  const after = headerFor(header);
  if (capoShift(header) === capoShift(after)) return [];
  return [`Its chords are named as they are played ${capoWords(after.capo)}.`];
}
