import { createLanguageService } from '../../service/languageService';
import type { NeckAnswer, NeckPictureRequest, NeckPlace } from '../../service/neck/neckAnswer';
import { alignedColumns } from '../alignedColumns';
import type { Asked, Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { numberOf, wordOf } from '../optionValues';
import { readPlace } from '../place';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

const LABELS = ['notes', 'degrees', 'intervals'] as const;
type Labels = (typeof LABELS)[number];

/** Shows the neck of the tuning in force at one place. */
export const neck: Command = {
  name: 'neck',
  does: 'show the neck of the tuning in force at one place: where the notes of a scale or chord lie',
  operands: {
    word: 'FILE LINE:COLUMN',
    help: 'a tab file, or - for standard input, and a place in it, counted from 1, such as 12:7',
    many: true,
  },
  options: [
    {
      name: 'scale',
      value: 'SCALE',
      help: 'a scale to mark, such as “D dorian”; the key in force without it',
    },
    { name: 'chord', value: 'CHORD', help: 'a chord to mark, such as G/B' },
    { name: 'show', value: LABELS.join('|'), help: 'what stands at each place; notes without it' },
    { name: 'frets', value: 'N', help: 'how many frets; all of the neck without it' },
    { name: 'svg', help: 'answer as an SVG picture, black on white' },
    { name: 'upright', help: 'the picture has the nut on top' },
    { name: 'left-handed', help: 'the picture is turned for a left-handed player' },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const [name, written, ...more] = asked.operands;
    if (written === undefined || more.length > 0)
      throw new Refusal('neck takes a file and one place in it, such as song.pegbox 12:7.');
    if (asked.flags.has('json') && asked.flags.has('svg'))
      throw new Refusal('--json and --svg are two ways to answer; give one of them.');
    const place = readPlace(written);
    const request = requestOf(asked);
    const { text } = await readTextFile(name);
    const service = createLanguageService();
    const document = service.open(text, settings);
    if (place.line >= document.lineCount)
      throw new Refusal(`${name} has ${document.lineCount} lines, so there is no line ${place.line + 1}.`);
    if (asked.flags.has('svg')) {
      const picture = service.neckSvg(document, place, request, settings);
      if ('error' in picture) throw new Refusal(picture.error);
      output.text(picture.svg);
      return EXIT.done;
    }
    const { labels = 'notes', scale, chord, frets } = request;
    const what = {
      ...(scale === undefined ? {} : { scale }),
      ...(chord === undefined ? {} : { chord }),
      ...(frets === undefined ? {} : { frets }),
    };
    const answer = service.neck(document, place, what, settings);
    if ('error' in answer) throw new Refusal(answer.error);
    if (asked.flags.has('json')) output.json(answer);
    else output.text(neckText(answer, labels));
    return EXIT.done;
  },
};

function requestOf(asked: Asked): NeckPictureRequest & { readonly labels?: Labels } {
  const [scale, chord] = [asked.values.get('scale'), asked.values.get('chord')];
  const labels = wordOf(asked, 'show', LABELS);
  const frets = numberOf(asked, 'frets', { whole: true, least: 1, most: 36 });
  return {
    ...(scale === undefined ? {} : { scale }),
    ...(chord === undefined ? {} : { chord }),
    ...(labels === undefined ? {} : { labels }),
    ...(frets === undefined ? {} : { frets }),
    ...(asked.flags.has('left-handed') ? { leftHanded: true } : {}),
    ...(asked.flags.has('upright') ? { upright: true } : {}),
  };
}

/** A row for each string and a column for each fret; `[A]` sounds at the place, `(A)` rings there. */
function neckText({ board, moment }: NeckAnswer, labels: Labels): string {
  if (!board) return '';
  const cells = board.numbers.map((_, at) => board.first + at);
  const rows = board.strings.map(({ number, note, places }) => [
    String(number),
    note,
    ...cells.map((cell) => {
      const place = places.find((one) => one.cell === cell);
      const how = moment.sounding.find(({ string, fret }) => string === number && fret === place?.fret)?.how;
      if (!place || (!place.marked && !how)) return '';
      const label = labelOf(place, labels);
      return how === undefined ? label : how === 'rings' ? `(${label})` : `[${label}]`;
    }),
  ]);
  const heading = ['string', 'open', ...board.numbers.map(String)];
  const { tones, root, degreesIn } = board;
  const counted = {
    notes: '',
    degrees:
      degreesIn === null
        ? 'No key is written, so notes stand in place of degrees'
        : `Degrees of ${degreesIn}`,
    intervals: `Intervals count from ${root.note}, ${root.words}`,
  };
  const above = [
    board.title,
    ...board.facts,
    tones.kind === 'none' ? '' : `${tones.name}: ${tones.notes.join(' ')}`,
    counted[labels],
  ];
  const below = [
    tones.sets,
    moment.where === '' ? '' : `${moment.where}. ${moment.words}.`,
    moment.note ? `${moment.note.words}.` : '',
  ];
  const lines = (texts: readonly string[]): string => texts.filter(Boolean).join('\n');
  return `${lines(above)}\n\n${alignedColumns([heading, ...rows], [0])}\n\n${lines(below)}`.trimEnd() + '\n';
}

function labelOf({ note, degree, interval }: NeckPlace, labels: Labels): string {
  if (labels === 'degrees') return degree?.short ?? note;
  return labels === 'intervals' ? interval.short : note;
}
