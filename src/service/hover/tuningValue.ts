import { formatNoteList } from '../../instrument/noteList';
import { retuningCaution } from '../../instrument/retuningCaution';
import { stringNumber, type Tuning } from '../../instrument/tuning';
import { formatTuningNotes, stepsFrom } from '../../instrument/tuningFormat';
import { findTuning } from '../../instrument/tunings';
import { formatPitchName } from '../../music/noteName';
import { STANDARD_PITCH } from '../../music/frequency';
import type { Header } from '../../notation/header';
import { usualTuning } from '../../notation/headerViews';
import { shortSheet } from '../sheet/shortForm';
import { openStringsOf } from '../tuningAnswer';
import { halfSteps, hertz, lines, listed, paragraphs, quoted } from './text';

const OCTAVE = 12;

/** The strings of a tuning with their frequencies, what they make when all are open, and what is to be turned. */
export function tuningHover(header: Header): string {
  const { tuning, instrument, referencePitch } = header;
  const steps = stepsFrom(usualTuning(instrument), tuning);
  const strings = tuning.strings.map((string, index) => {
    const frequencies = listed(string.pitches.map(({ midi }) => hertz(midi, referencePitch)));
    const change = stepWords(steps[index]);
    return `- String ${stringNumber(tuning, index)}: ${formatNoteList([string])}, ${frequencies}${change}`;
  });
  // Nobody tunes a string up by an octave: these are other strings, as the remark says.
  const raised = Math.max(0, ...steps.map((step) => (step === undefined || step === OCTAVE ? 0 : step)));
  const remark = tuning.name === undefined ? undefined : findTuning(tuning.name, instrument)?.remark;
  return paragraphs(
    tuning.name === undefined
      ? `**${formatTuningNotes(tuning)}**`
      : `**${quoted(tuning.name)}** · ${formatTuningNotes(tuning)}`,
    [...strings].reverse().join('\n'),
    lines(
      openStrings(tuning),
      ...shortSheet(header),
      `Steps are counted from the usual tuning of the ${instrument.name}, frequencies at A4 = ${referencePitch} Hz${
        referencePitch === STANDARD_PITCH ? '' : ' as written'
      }, without a capo`,
    ),
    lines(remark, retuningCaution(raised)),
  );
}

function stepWords(step: number | undefined): string {
  if (step === undefined) return ', a string that the usual tuning has not';
  if (step === 0) return '';
  return `, ${step < 0 ? 'down' : 'up'} ${halfSteps(Math.abs(step))}`;
}

function openStrings(tuning: Tuning): string {
  const naming = openStringsOf(tuning);
  const [first, ...others] = naming.names;
  const notes = naming.notes.map(formatPitchName).join(' ');
  if (!first || naming.kind === 'unnamed') return `The open strings make no everyday chord: ${notes}`;
  const words = first.words === '' ? '' : ` (${first.words})`;
  const also = others.length > 0 ? `; also ${others.map(({ name }) => name).join(', ')}` : '';
  return `The open strings make **${first.name}**${words}${also}`;
}
