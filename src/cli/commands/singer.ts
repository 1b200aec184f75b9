import { readKey } from '../../music/key';
import { readVoice, readVoiceRange } from '../../music/voices';
import type { TabDocument } from '../../notation/tabDocument';
import { createLanguageService } from '../../service/languageService';
import type { Settings } from '../../service/records';
import type { LanguageService } from '../../service/serviceApi';
import type { SingerAnswer, SingerRequest, SingerWay, SungRange } from '../../service/singer/singerAnswer';
import { alignedColumns } from '../alignedColumns';
import { runChange } from '../changeCommand';
import type { Asked, Command } from '../command';
import { JSON_OPTION, LINES, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { readLineRange } from '../lineRange';
import { numberOf } from '../optionValues';
import type { Output } from '../output';
import { readable } from '../readable';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Finds the capo or tuning in which a tune suits a singer, and writes the tab so. */
export const singer: Command = {
  name: 'singer',
  does: 'find the capo or tuning in which a tune suits a singer; every shape stays',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [
    { name: 'voice', value: 'V', help: 'soprano, mezzo-soprano, alto, tenor, baritone or bass' },
    { name: 'range', value: 'LOW-HIGH', help: 'the notes that the singer is at ease with, such as A3-D5' },
    { name: 'key', value: 'K', help: 'the key that is to sound, such as Bb or "E minor"' },
    { name: 'tune', value: 'PART', help: 'the part whose top line is the tune' },
    { name: 'low', value: 'NOTE', help: 'the lowest note of the tune as the piece sounds now, such as D4' },
    { name: 'high', value: 'NOTE', help: 'the highest note of the tune, such as E5' },
    { name: 'highest-capo', value: 'N', help: 'the highest fret that a capo may go to; 7 is usual' },
    { name: 'take', value: 'N', help: 'write the tab in the way of this number in the list' },
    LINES,
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const take = numberOf(asked, 'take', { whole: true, least: 1, most: 12 });
    const request = requestOf(asked);
    if (take !== undefined) return taken(asked, output, request, take);
    const settings = await settingsOf(asked);
    const { text } = await readTextFile(asked.operands[0]);
    const service = createLanguageService();
    const document = service.open(text, settings);
    const lines = asked.values.get('lines');
    const range = lines === undefined ? undefined : readLineRange(lines, document);
    const answer = answerOf(service, document, { range, ...request }, settings);
    if (asked.flags.has('json')) output.json(answer);
    else output.text(singerText(answer));
    output.report([...answer.remarks, ...answer.cautions].map((line) => `${line}\n`).join(''));
    return EXIT.done;
  },
};

/** Writes one way of the list. */
function taken(asked: Asked, output: Output, request: Wanted, take: number): ReturnType<Command['run']> {
  return runChange(asked, output, ({ service, document, settings, range }) => {
    if (document.systems.length === 0) return { error: '' };
    const { ways } = answerOf(service, document, { range, ...request }, settings);
    const way = ways[take - 1];
    if (!way) throw new Refusal(`--take: the list has ${ways.length} ways, so there is no ${take}.`);
    if (!way.request)
      throw new Refusal(`--take: way ${take} is the piece as it stands; nothing is to be changed.`);
    return service.applyFit(document, way.request, settings);
  });
}

type Wanted = Omit<SingerRequest, 'range'>;

function requestOf(asked: Asked): Wanted {
  const { values } = asked;
  const given = {
    voice: values.get('voice'),
    compass: values.get('range'),
    key: values.get('key'),
    tunePart: values.get('tune'),
    low: values.get('low'),
    high: values.get('high'),
  };
  if (given.voice === undefined && given.compass === undefined && given.key === undefined)
    throw new Refusal('Say what suits the singer: --voice alto, --range A3-D5 or --key Bb.');
  if ((given.low === undefined) !== (given.high === undefined))
    throw new Refusal('The tune needs both --low and --high, such as --low D4 --high E5.');
  if (given.voice !== undefined) readable('--voice', readVoice(given.voice));
  if (given.compass !== undefined) readable('--range', readVoiceRange(given.compass));
  if (given.key !== undefined) readable('--key', readKey(given.key));
  const highestCapo = numberOf(asked, 'highest-capo', { whole: true, least: 0, most: 36 });
  const said = Object.entries(given).filter(([, value]) => value !== undefined);
  return { ...Object.fromEntries(said), ...(highestCapo !== undefined && { highestCapo }) };
}

function answerOf(
  service: LanguageService,
  document: TabDocument,
  request: SingerRequest,
  settings: Settings,
): SingerAnswer {
  const answer = service.fitSinger(document, request, settings);
  if ('error' in answer) throw new Refusal(answer.error, EXIT.refused);
  return answer;
}

const HEADINGS = ['', 'way', 'sound', 'sung', 'room under', 'room above', 'tension', 'frets left'];

function singerText({ voice, tune, here, ways }: SingerAnswer): string {
  const head = [
    ...(voice ? [`Voice: ${rangeText(voice)}`] : []),
    ...(tune && voice ? [`Tune: ${rangeText(tune)}, as it sounds now`] : []),
    `As it stands: ${[here.words, ...(here.lies ? [here.lies.words] : [])].join('. ')}.`,
  ];
  const rows = ways.map((way, i) => [String(i + 1), ...row(way)]);
  return `${head.join('\n')}\n\n${alignedColumns([HEADINGS, ...rows], [0, 4, 5, 6, 7])}\n`;
}

function rangeText({ name, low, high }: SungRange): string {
  return name === `${low}–${high}` ? name : `${name}, ${low}–${high}`;
}

function row({ title, words, lies, strain, fretsLeft }: SingerWay): string[] {
  const { change } = strain;
  return [
    title,
    words,
    lies ? `${lies.low}–${lies.high}${octaveText(lies.octaves)}` : '',
    lies ? String(lies.under) : '',
    lies ? String(lies.above) : '',
    change === 0 ? 'as now' : `${change > 0 ? '+' : '−'}${Math.abs(change)} %`,
    String(fretsLeft),
  ];
}

function octaveText(octaves: number): string {
  if (octaves === 0) return '';
  return `, ${Math.abs(octaves) === 1 ? 'the octave' : '2 octaves'} ${octaves < 0 ? 'below' : 'above'}`;
}
