import { widestStretch } from '../checks/stretch-over-reach';
import { formatTuning } from '../instrument/tuningFormat';
import { formatKey } from '../music/key';
import { formatNoteName } from '../music/noteName';
import type { Header } from '../notation/header';
import type { SoundingPitch, SystemReading } from '../notation/reading';
import type { Section, System, TabDocument } from '../notation/tabDocument';
import type { SectionLens } from './records';

/**
 * One line above each section: its bars, tuning, key, the notes from lowest to highest, and the widest stretch of the
 * fretting hand. Of several parts each is told. What stands before the first heading has its line above its first
 * system.
 * @example sectionLens(document)[0]?.text // '4 bars · DADGAD · D major · D2–A4 · widest stretch 97 mm in bar 3'
 */
export function sectionLens(document: TabDocument): readonly SectionLens[] {
  const bySection = new Map<Section | undefined, System[]>();
  for (const system of document.systems) {
    const own = bySection.get(system.section);
    if (own) own.push(system);
    else bySection.set(system.section, [system]);
  }
  return [...bySection].flatMap(([section, systems]): SectionLens[] => {
    const line = section?.line ?? systems[0]?.firstLine;
    return line === undefined ? [] : [{ line, text: sectionText(document, systems) }];
  });
}

function sectionText(document: TabDocument, systems: readonly System[]): string {
  const parts = new Map<string | undefined, System[]>();
  for (const system of systems) {
    const { part } = system.header;
    const own = parts.get(part);
    if (own) own.push(system);
    else parts.set(part, [system]);
  }
  return [...parts]
    .map(([part, own]) => {
      const told = partText(document, own);
      return document.parts.length > 1 && part !== undefined ? `${part}: ${told}` : told;
    })
    .join(' | ');
}

function partText(document: TabDocument, systems: readonly System[]): string {
  const bars = systems.reduce((sum, { reading }) => sum + reading.bars.length, 0);
  const headers = [...new Set(systems.map(({ header }) => header))];
  const each = (said: (header: Header) => string): string => [...new Set(headers.map(said))].join(', then ');
  const range = rangeText(systems);
  const keys = each(({ key }) => (key ? formatKey(key) : ''));
  return [
    `${bars} ${bars === 1 ? 'bar' : 'bars'}`,
    each(({ tuning, instrument }) => formatTuning(tuning, instrument)),
    keys,
    range,
    stretchText(document, systems),
  ]
    .filter((said) => said !== '')
    .join(' · ');
}

function rangeText(systems: readonly System[]): string {
  const ends = systems.flatMap(({ reading }) => factsOf(reading).ends);
  const [first] = ends;
  if (!first) return '';
  const low = ends.reduce((a, b) => (b.midi < a.midi ? b : a), first);
  const high = ends.reduce((a, b) => (b.midi > a.midi ? b : a), first);
  return `${formatNoteName(low.name)}–${formatNoteName(high.name)}`;
}

function stretchText(document: TabDocument, systems: readonly System[]): string {
  let widest: { readonly span: number; readonly bar: number } | undefined;
  for (const system of systems) {
    const found = stretchIn(document, system);
    if (found && found.span > (widest?.span ?? 0)) widest = found;
  }
  return widest ? `widest stretch ${Math.round(widest.span)} mm in bar ${widest.bar}` : '';
}

function stretchIn(document: TabDocument, system: System): { span: number; bar: number } | undefined {
  const { reading, header } = system;
  const facts = factsOf(reading);
  if (facts.stretch === undefined) {
    const scene = { system, reading, header, ringing: [], reach: Infinity };
    facts.stretch = widestStretch(scene) ?? null;
  }
  const { stretch } = facts;
  return stretch
    ? { span: stretch.span, bar: document.placeOf(system).firstBar + stretch.note.bar }
    : undefined;
}

/** What a system adds to its section. */
interface Facts {
  /** The lowest and the highest pitch, where something sounds. */
  readonly ends: readonly SoundingPitch[];
  /** Null where no two fingers are down at once, undefined before it was looked for. */
  stretch: ReturnType<typeof widestStretch> | null;
}

const remembered = new WeakMap<SystemReading, Facts>();

/** Worked out once while a system stays as it is, since the line is asked for after every key. */
function factsOf(reading: SystemReading): Facts {
  let facts = remembered.get(reading);
  if (!facts) {
    const pitches = reading.notes.flatMap((note) => note.pitches);
    const [first] = pitches;
    const ends = first
      ? [
          pitches.reduce((a, b) => (b.midi < a.midi ? b : a), first),
          pitches.reduce((a, b) => (b.midi > a.midi ? b : a), first),
        ]
      : [];
    remembered.set(reading, (facts = { ends, stretch: undefined }));
  }
  return facts;
}
