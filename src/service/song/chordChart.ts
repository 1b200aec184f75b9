import { formatCapo } from '../../instrument/capo';
import { formatTuning, nameOfTuning } from '../../instrument/tuningFormat';
import { transposeKey } from '../../music/key';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { shapeAnswer } from '../shapes/shapeAnswer';
import { chordSystems } from './chordEvents';
import { chartSheet } from './chartSheet';
import { chartText } from './chartText';
import { chooseShapes, type PlayedChord } from './chooseShapes';
import { NO_NAMES } from './fillChords';
import type { ChartChord, ChartRequest, ChordChart } from './songAnswer';
import { wishTrouble } from './wishTrouble';

/**
 * Every chord that the `chords` rows of a passage name, with the shapes that filling the passage would choose; a chord
 * stands in it once for each shape it is played in. Tab under the names is not looked at.
 */
export function chordChart(
  document: TabDocument,
  request: ChartRequest,
  settings: Settings,
): ChordChart | ServiceError {
  const trouble = wishTrouble(request);
  if (trouble !== undefined) return { error: trouble };
  const systems = chordSystems(document, request.range);
  const { played } = chooseShapes(systems, { document, wishes: request, settings });
  const named = played.filter(({ event }) => event.chord === undefined || event.chord.root);
  const [first] = named;
  if (!first) return { error: NO_NAMES };
  const groups = new Map<string, { chord: PlayedChord; bars: number[] }>();
  for (const chord of named) {
    const key = keyOf(chord);
    const group = groups.get(key) ?? { chord, bars: [] };
    if (!group.bars.includes(chord.event.bar)) group.bars.push(chord.event.bar);
    groups.set(key, group);
  }
  const chords = [...groups.values()].map(({ chord, bars }) => chartChord(document, chord, bars));
  const tunings = [...new Set(chords.map(({ tuning }) => tuning))];
  const without = chords.filter(({ shape }) => shape === null).length;
  const shapes = chords.length - without;
  const chart = { title: first.header.title ?? null, tunings, chords };
  return {
    ...chart,
    text: chartText(chart),
    ...chartSheet(chart),
    remarks: [
      `${shapes} ${shapes === 1 ? 'shape' : 'shapes'} for ${named.length} ${named.length === 1 ? 'name' : 'names'}, chosen so that the hand moves least over the whole passage.`,
      ...(without > 0
        ? [`${without} ${without === 1 ? 'chord has' : 'chords have'} no shape; the chart says why.`]
        : []),
    ],
  };
}

function keyOf({ event, header, played }: PlayedChord): string {
  const frets = played?.shape.frets.map((fret) => fret ?? 'x').join(' ') ?? '-';
  return [event.mark.text, frets, header.part ?? '', tuningWords(header)].join('\n');
}

function chartChord(
  { parts }: TabDocument,
  { event, header, played, reason }: PlayedChord,
  bars: readonly number[],
): ChartChord {
  const shift = capoShift(header);
  const key = header.key && transposeKey(header.key, shift);
  return {
    name: event.mark.text,
    sounds: shift === 0 || !event.chord ? null : transposeWrittenChord(event.mark.text, shift, key),
    part: parts.length > 1 ? (header.part ?? null) : null,
    tuning: tuningWords(header),
    bars,
    shape: played ? shapeAnswer(played.shape.shape, event.chord, header) : null,
    reason: reason ?? '',
  };
}

/** `DADGAD, capo at fret 2`; on another instrument than the guitar with its name. */
function tuningWords({ tuning, instrument, capo }: Header): string {
  const name = nameOfTuning(tuning, instrument);
  const notes = formatTuning(tuning, instrument);
  const own = name === undefined || name === notes ? notes : name;
  return [
    instrument.name === 'guitar' ? own : `${instrument.name}, ${own}`,
    ...(capo ? [`capo at fret ${formatCapo(capo)}`] : []),
  ].join(', ');
}
