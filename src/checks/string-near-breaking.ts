import { formatTuning } from '../instrument/tuningFormat';
import { retune } from '../instrument/retune';
import { retuningCaution } from '../instrument/retuningCaution';
import { halfStepsBetween, STRONGEST_STEEL } from '../instrument/strings/steelWire';
import { raisedBy } from '../instrument/strings/strainState';
import { strainSentence } from '../instrument/strings/strainWords';
import type { StringLoad } from '../instrument/strings/stringLoads';
import { formatNoteName } from '../music/noteName';
import type { FieldGroup } from '../notation/tabDocument';
import type { Check, Finding, Mend } from './check';
import { rangeOf } from './support/edits';
import { groupStrain, nearBreaking, setInGroup, type GroupStrain } from './support/strain';
import { tuningRemark } from './support/raises';

/** Shortest scale length that is offered, millimetres: that of a mandolin, from memory. */
const SHORTEST_OFFERED = 330;

export const stringNearBreaking: Check = {
  code: 'string-near-breaking',
  severity: 'warning',
  title: 'A string near breaking',
  help: {
    group: 'Fields',
    meaning:
      'At this pitch and length a plain steel string is near the least strength that ASTM A228 asks of music wire of its size: information above 60 %, a warning above 70 %, an error at 100 %, where it cannot be strung. The stress goes with pitch and length alone, so that a thinner string hardly helps. The first two shares are engineering values, which `pegbox.strain` sets. A string at its usual pitch and gauge, such as the octave of a 12-string guitar’s third course, is not told. Wound strings are not judged: they break at the core, whose thickness is rarely published.',
    mending:
      'Tune lower, with a capo where the pitch is wanted, or string a shorter neck. Tune slowly, with your eyes and face away from the strings. The string maker’s figures come first; ask a luthier before you raise a whole set.',
  },
  run: {
    fields: (group, _document, settings) => {
      const strain = groupStrain(group, settings);
      return strain ? findings(group, strain) : [];
    },
  },
  examples: {
    raises: [
      'tuning: all fifths\n',
      'tuning: standard up 3\n',
      'tuning: CGDAEG\n',
      'scale length: 30 in\n',
      'tuning: standard up 2\ngauges: 46w 36w 26w 17 13 10\n',
      'instrument: 12-string guitar\ntuning: standard up 1\n',
    ],
    quiet: [
      'tuning: standard\n',
      'tuning: open E\n',
      'tuning: high strung\n',
      'instrument: 12-string guitar\n',
      'instrument: mandolin\nreference pitch: 442\n',
      'instrument: tenor guitar\n',
      'instrument: classical guitar\ntuning: standard up 3\n',
      'tuning: high strung\ngauges: 30 20 14 10 13 10\n',
    ],
  },
};

function findings(group: FieldGroup, strain: GroupStrain): readonly Finding[] {
  const near = nearBreaking(strain);
  const [worst] = near;
  if (!worst) return [];
  const { field, header } = strain;
  const { lineIndex, line } = field;
  const sentences = near.map(({ load, state }) =>
    strainSentence(load, state, { scaleLength: header.scaleLength, gaugesAre: strain.set.gaugesAre }),
  );
  const caution =
    retuningCaution(raisedBy(strain.set)) ??
    'Tune slowly and keep your eyes and face away from the strings: a string can break. The string maker’s figures decide; ask a luthier.';
  const message = [...new Set(sentences), caution, tuningRemark(header)]
    .filter((text) => text !== undefined && text !== '')
    .join(' ');
  return [
    {
      range: rangeOf(lineIndex, line.valueStart, line.valueStart + line.value.length),
      message,
      severity: worst.state === 'error' || worst.state === 'warning' ? worst.state : 'information',
      mends: mendsOf(
        group,
        strain,
        near.map(({ load }) => load),
      ),
    },
  ];
}

/** Lower to where nothing is told any more: the strings concerned, or the whole set; or a shorter neck. */
function mendsOf(
  group: FieldGroup,
  { header, limits }: GroupStrain,
  loads: readonly StringLoad[],
): readonly Mend[] {
  const { tuning, instrument, scaleLength } = header;
  const down = new Map<number, number>();
  for (const load of loads)
    down.set(load.number, Math.max(down.get(load.number) ?? 0, stepsDown(load, limits.information)));
  const most = Math.max(...down.values());
  const mends: Mend[] = [];
  const lower = (title: string, steps: readonly number[]): void => {
    const value = formatTuning(
      { strings: retune(tuning.strings, steps), name: undefined, text: '' },
      instrument,
    );
    mends.push({ title, preferred: false, edits: [setInGroup(group, 'tuning', value)] });
  };
  const count = tuning.strings.length;
  const alone = tuning.strings.map((_, index) => -(down.get(count - index) ?? 0));
  if (alone.some((steps) => steps !== most * -1)) {
    const notes = retune(tuning.strings, alone).flatMap(({ pitches: [{ name }] }, index) =>
      alone[index] === 0 ? [] : [`string ${count - index} down to ${formatNoteName(name)}`],
    );
    if (notes.length <= 3) lower(`Tune ${notes.join(', ')}`, alone);
  }
  lower(
    `Tune all strings ${most} half ${most === 1 ? 'step' : 'steps'} lower`,
    alone.map(() => -most),
  );
  const [worst] = loads;
  const shorter = worst ? Math.floor(scaleLength * Math.sqrt(limits.information / shareOf(worst))) : 0;
  if (shorter >= SHORTEST_OFFERED && shorter < scaleLength)
    mends.push({
      title: `Say that the scale length is ${shorter} mm`,
      preferred: false,
      edits: [setInGroup(group, 'scale length', `${shorter} mm`)],
    });
  return mends;
}

/** Whole half steps down to at most a share of the strength. */
function stepsDown(load: StringLoad, share: number): number {
  return Math.ceil(halfStepsBetween(share, shareOf(load)) - 1e-9);
}

function shareOf({ share, stress }: StringLoad): number {
  return share ?? stress / STRONGEST_STEEL;
}
