import type { TuningAnswer } from '../../service/serviceApi';
import type { SheetAnswer, SheetSlideChord } from '../../service/sheet/sheetAnswer';
import { alignedColumns } from '../alignedColumns';

/** Places of a bar that are listed for each chord; the JSON answer has all. */
const SLIDE_PLACES = 8;

/** The tuning sheet for people who read it in a terminal: a table of strings, then one block a subject. */
export function sheetText(answer: TuningAnswer, sheet: SheetAnswer): string {
  const { retuning, barres, slide, scale } = sheet;
  const blocks = [
    stringTable(answer, sheet),
    block('tune by fret', words(sheet.tuneBy)),
    block('octaves', words(sheet.octaves)),
    block('harmonics', words(sheet.harmonics)),
    block(retuning.words, [
      ...retuning.steps.map(
        (step, at) => `${at + 1}. ${step.words}${step.check === '' ? '' : `. ${step.check}`}`,
      ),
      ...(retuning.lastCheck === ''
        ? []
        : [`${retuning.steps.length + 1}. ${retuning.lastCheck}`, retuning.pull.words]),
    ]),
    ...(retuning.carriesOver.words.length > 0
      ? [block('what carries over', retuning.carriesOver.words)]
      : []),
    block('straight barres', [
      ...words(barres.frets),
      barres.words,
      ...(barres.remark === '' ? [] : [barres.remark]),
    ]),
    ...(slide ? [block('places of the bar', [...slide.chords.flatMap(slideLines), slide.words])] : []),
    ...(scale ? [`scale of ${scale.words}`] : []),
  ];
  return `${blocks.join('\n\n')}\n`;
}

function stringTable({ strings, chord, alternatives }: TuningAnswer, sheet: SheetAnswer): string {
  const rows = strings.map(({ number, note, steps }, at) => [
    String(number),
    note,
    `${(sheet.strings[at]?.pitches ?? []).map(({ frequency }) => frequency.toFixed(2)).join(' / ')} Hz`,
    steps === null ? 'not there' : steps > 0 ? `+${steps}` : String(steps),
    sheet.strings[at]?.role ?? '',
  ]);
  const headings = ['string', 'note', 'frequency', 'from usual', 'in the open chord'];
  const also = alternatives.length > 0 ? `, also ${alternatives.join(', ')}` : '';
  return `${alignedColumns([headings, ...rows], [0, 2, 3])}\nopen strings: ${chord}${also}`;
}

function slideLines({ words: told, places }: SheetSlideChord): readonly string[] {
  const more = places.length - SLIDE_PLACES;
  return [
    told,
    ...places.slice(0, SLIDE_PLACES).map((place) => `  ${place.words}`),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ];
}

function words(list: readonly { readonly words: string }[]): readonly string[] {
  return list.map((one) => one.words);
}

function block(heading: string, lines: readonly string[]): string {
  return [heading, ...lines.map((line) => `  ${line}`)].join('\n');
}
