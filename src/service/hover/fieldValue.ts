import { formatGauges } from '../../instrument/gauges';
import { MILLIMETRES_PER_INCH } from '../../instrument/scaleLength';
import { formatTuning, formatTuningNotes } from '../../instrument/tuningFormat';
import { formatKey, isInKey, keyScale } from '../../music/key';
import { barLength, formatMeter, isCompound } from '../../music/meter';
import { formatFraction } from '../../music/fraction';
import { formatPitchName, pitchClassOf } from '../../music/noteName';
import type { FieldName } from '../../notation/fieldNames';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf, soundingSpelling } from '../../notation/headerViews';
import { stringNumber } from '../../instrument/tuning';
import type { Settings } from '../records';
import { strainHover } from './strain';
import { lines, listed, paragraphs, pitchText } from './text';
import { tuningHover } from './tuningValue';

/** What was understood of a field's value, from the header that holds after it; empty for free text. */
export function fieldValueHover(field: FieldName, header: Header, settings: Settings): string {
  return VALUES[field](header, settings);
}

const none = (): string => '';

const VALUES: Readonly<Record<FieldName, (header: Header, settings: Settings) => string>> = {
  title: none,
  by: none,
  remark: none,
  part: none,
  instrument: ({ instrument }) =>
    lines(
      `**${instrument.name}**: ${instrument.firstFrets.length} strings, usually tuned ${instrument.usualTuning}`,
      `${instrument.frets} frets, scale length ${instrument.scaleLength} mm, unless fields say otherwise`,
    ),
  tuning: tuningHover,
  capo: capoHover,
  frets: ({ frets }) => `The neck has **${frets} frets**`,
  'scale length': (header, settings) =>
    paragraphs(
      `**${header.scaleLength} mm** (${(header.scaleLength / MILLIMETRES_PER_INCH).toFixed(2)} in) from nut to saddle`,
      strainHover(header, settings),
    ),
  gauges: gaugesHover,
  'reference pitch': ({ referencePitch }) => `A4 sounds at **${referencePitch} Hz**`,
  key: keyHover,
  meter: ({ meter }) => {
    const quarters = barLength(meter);
    const beats = isCompound(meter)
      ? `${meter.upper / 3} dotted beats of three lower notes`
      : `${meter.upper} ${meter.upper === 1 ? 'beat' : 'beats'}`;
    return `**${formatMeter(meter)}**: a bar has ${beats}, ${formatFraction(quarters)} quarter notes long`;
  },
  tempo: ({ tempo }) => {
    const quarters = Math.round(tempo.quartersPerMinute * 100) / 100;
    return `**${quarters} quarter notes a minute**`;
  },
  feel: ({ feel }) =>
    feel === 'straight'
      ? '**straight**: played as written'
      : `**${feel}**: in playing only; written times stay even`,
  fretting: ({ fretting }) =>
    fretting === 'slide' ? '**slide**: one straight bar stops all strings' : '**fingers** stop the strings',
};

function capoHover(header: Header): string {
  const { capo, tuning } = header;
  if (!capo) return '**No capo**: frets count from the nut';
  const board = fingerboardOf(header);
  const open = tuning.strings.map((_, i) => pitchText(board.openMidi(i), soundingSpelling(header))).join(' ');
  const shape = formatTuning(tuning, header.instrument);
  if (!capo.strings) {
    return lines(
      `**Capo at fret ${capo.fret}**, on every string: frets count from it`,
      `Open strings sound ${open}; written ${shape}, all ${capo.fret} half steps higher`,
    );
  }
  const free = tuning.strings
    .map((_, i) => stringNumber(tuning, i))
    .filter((number) => !capo.strings?.includes(number));
  return lines(
    `**Partial capo at fret ${capo.fret}** on strings ${listed(capo.strings.map(String))}; ${listed(
      free.map(String),
    )} stay free`,
    `Open strings sound ${open}; frets count from the nut on every string`,
  );
}

function keyHover(header: Header): string {
  const { key } = header;
  if (!key) return '';
  const sounding = soundingSpelling(header).key;
  const scale = keyScale(key).map(formatPitchName).join(' ');
  const outside = header.tuning.strings
    .filter(({ pitches }) => !isInKey(key, pitchClassOf(pitches[0].name)))
    .map((string) => formatPitchName(string.pitches[0].name));
  return lines(
    `**${formatKey(key)}**: ${scale}`,
    capoShift(header) > 0 && sounding
      ? `With the capo it sounds in ${formatKey(sounding)}: ${keyScale(sounding).map(formatPitchName).join(' ')}`
      : '',
    outside.length > 0 ? `Open strings outside the key: ${listed([...new Set(outside)])}` : '',
  );
}

function gaugesHover(header: Header, settings: Settings): string {
  const { gauges, tuning } = header;
  if (!gauges) return '';
  return paragraphs(
    `**${formatGauges(gauges)}** for ${formatTuningNotes(tuning)}`,
    strainHover(header, settings),
  );
}
