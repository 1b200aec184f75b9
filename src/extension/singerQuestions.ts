import type * as vscode from 'vscode';
import { formatNoteName } from '../music/noteName';
import { VOICE_RANGES } from '../music/voices';
import type { SingerAnswer, SingerRequest } from '../service/singer/singerAnswer';
import type { ServiceError } from '../service/serviceApi';
import { refuse } from './applyChange';
import { askText } from './askText';
import { pick } from './pick';

export const SINGER_TITLE = 'Fit a singer';

/** What a caller or the user says of singer and tune. */
export type SingerWishes = Omit<SingerRequest, 'range'>;

/** Asks the server. */
export type AskSinger = (wishes: SingerWishes) => Promise<SingerAnswer | ServiceError>;

interface VoiceItem extends vscode.QuickPickItem {
  readonly voice?: string;
  readonly typed?: 'compass' | 'key';
}

/** Asks what suits the singer: a voice, the lowest and highest note, or a key. Undefined when the user leaves. */
export async function askSinger(ask: AskSinger): Promise<SingerWishes | undefined> {
  const items: VoiceItem[] = [
    {
      label: '$(edit) Lowest and highest note…',
      detail: 'What the singer is at ease with; this tells best.',
      typed: 'compass',
    },
    { label: '$(edit) A key that suits…', detail: 'The key that is to sound.', typed: 'key' },
    ...VOICE_RANGES.map(({ name, low, high }) => ({
      label: name,
      description: `${formatNoteName(low)}–${formatNoteName(high)}`,
      voice: name,
    })),
  ];
  const picked = await pick(items, { title: SINGER_TITLE, placeholder: 'What suits the singer?' });
  if (picked?.voice !== undefined) return { voice: picked.voice };
  if (picked?.typed === 'key') {
    const key = await askText({
      title: SINGER_TITLE,
      prompt: 'The key that is to sound, such as Bb or E minor',
      check: async (text) => errorOf(await ask({ key: text })),
    });
    return key === undefined ? undefined : { key };
  }
  if (picked === undefined) return undefined;
  const compass = await askText({
    title: SINGER_TITLE,
    prompt: 'The lowest and the highest note that the singer is at ease with, such as A3-D5; C4 is middle C',
    check: async (text) => errorOf(await ask({ compass: text, ...ANY_TUNE })),
  });
  return compass === undefined ? undefined : { compass };
}

/** Any tune will do to try what the singer can sing. */
const ANY_TUNE = { low: 'C4', high: 'C5' };

interface TuneItem extends vscode.QuickPickItem {
  readonly tune: SingerWishes | 'typed';
}

/** Asks where the tune is: as it was found, in another part, or by its notes. Undefined when the user leaves. */
export async function askTune(singer: SingerWishes, ask: AskSinger): Promise<SingerWishes | undefined> {
  // A key alone needs no tune.
  if (singer.key !== undefined) return singer;
  const found = await ask(singer);
  const known = await ask({ ...singer, ...ANY_TUNE });
  if ('error' in known) {
    refuse(known.error);
    return undefined;
  }
  const { parts } = known;
  const tune = 'error' in found ? null : found.tune;
  const items: TuneItem[] = [
    ...(tune
      ? [
          {
            label: tune.name.charAt(0).toUpperCase() + tune.name.slice(1),
            description: `${tune.low}–${tune.high}`,
            detail: 'As far as the tab tells it.',
            tune: singer,
          },
        ]
      : []),
    ...(parts.length > 1
      ? parts.map((name) => ({
          label: `The part ${name}`,
          detail: 'Its top line is the tune.',
          tune: { ...singer, tunePart: name },
        }))
      : []),
    {
      label: '$(edit) Its lowest and highest note…',
      detail: 'As the piece sounds now.',
      tune: 'typed',
    },
  ];
  const [only] = items;
  const picked =
    items.length === 1 ? only : await pick(items, { title: SINGER_TITLE, placeholder: 'Where is the tune?' });
  if (picked === undefined) return undefined;
  if (picked.tune !== 'typed') return picked.tune;
  const typed = await askText({
    title: SINGER_TITLE,
    prompt:
      'The lowest and the highest note of the tune as the piece sounds now, such as D4-E5; C4 is middle C',
    check: async (text) => errorOf(await ask({ ...singer, ...endsOf(text) })),
  });
  return typed === undefined ? undefined : { ...singer, ...endsOf(typed) };
}

/**
 * Two notes of a text; what is no note is left to the server, which tells it.
 * @example endsOf('D4-E5') // { low: 'D4', high: 'E5' }
 */
export function endsOf(text: string): { readonly low: string; readonly high: string } {
  const [low = '', high = ''] = text
    .trim()
    .split(/\s*[-–—,/]\s*|\s+to\s+|\s+/)
    .filter((piece) => piece !== '');
  return { low, high };
}

function errorOf(answer: SingerAnswer | ServiceError): string | undefined {
  return 'error' in answer ? answer.error : undefined;
}
