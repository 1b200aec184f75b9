import type { Check, Runs } from './check';
import { barOutOfLine } from './bar-out-of-line';
import { barSignMissing } from './bar-sign-missing';
import { bendNotRising } from './bend-not-rising';
import { bendOpenString } from './bend-open-string';
import { capoValue } from './capo-value';
import { chordAdds } from './chord-adds';
import { chordBass } from './chord-bass';
import { chordDisagrees } from './chord-disagrees';
import { chordName } from './chord-name';
import { chordNotStraight } from './chord-not-straight';
import { chordOmits } from './chord-omits';
import { countFit } from './count-fit';
import { countOrder } from './count-order';
import { countRange } from './count-range';
import { countSyllable } from './count-syllable';
import { dashBeforeNote } from './dash-before-note';
import { emptyField } from './empty-field';
import { endingMark } from './ending-mark';
import { feelValue } from './feel-value';
import { fieldMisspelled } from './field-misspelled';
import { fingersMark } from './fingers-mark';
import { flatOrB } from './flat-or-b';
import { fretBelowCapo } from './fret-below-capo';
import { fretBelowString } from './fret-below-string';
import { fretNumber } from './fret-number';
import { fretPastNeck } from './fret-past-neck';
import { fretsValue } from './frets-value';
import { frettingValue } from './fretting-value';
import { gaugesThinToThick } from './gauges-thin-to-thick';
import { gaugesValue } from './gauges-value';
import { hammerOnNotRising } from './hammer-on-not-rising';
import { harmonicAmbiguous } from './harmonic-ambiguous';
import { harmonicNode } from './harmonic-node';
import { instrumentValue } from './instrument-value';
import { keyValue } from './key-value';
import { labelDisagrees } from './label-disagrees';
import { looseRow } from './loose-row';
import { lookAlikes } from './look-alikes';
import { meterValue } from './meter-value';
import { partsDiffer } from './parts-differ';
import { pickingMark } from './picking-mark';
import { pullOffNotFalling } from './pull-off-not-falling';
import { referencePitchValue } from './reference-pitch-value';
import { releaseWithoutBend } from './release-without-bend';
import { repeatedField } from './repeated-field';
import { rowBarOutOfLine } from './row-bar-out-of-line';
import { rowMisspelled } from './row-misspelled';
import { rowWithoutStrings } from './row-without-strings';
import { scaleForKey } from './scale-for-key';
import { scaleLengthValue } from './scale-length-value';
import { signWithoutNote } from './sign-without-note';
import { signsTogether } from './signs-together';
import { slideAgainstSign } from './slide-against-sign';
import { slideToNowhere } from './slide-to-nowhere';
import { spaceInBar } from './space-in-bar';
import { splitSystem } from './split-system';
import { stretchOverReach } from './stretch-over-reach';
import { stringLineMisspelled } from './string-line-misspelled';
import { stringNearBreaking } from './string-near-breaking';
import { stringSlack } from './string-slack';
import { stringsLeftOut } from './strings-left-out';
import { systemsTogether } from './systems-together';
import { tabCharacter } from './tab-character';
import { tempoValue } from './tempo-value';
import { tooManyStrings } from './too-many-strings';
import { tuningRaisesStrings } from './tuning-raises-strings';
import { tuningValue } from './tuning-value';
import { unknownSign } from './unknown-sign';
import { unmatchedBracket } from './unmatched-bracket';
import { upsideDown } from './upside-down';
import { usualLabels } from './usual-labels';

/** Every check, in the order of the help page. Codes are stable: settings and links go by them. */
export const CHECKS: readonly Check[] = [
  fieldMisspelled,
  scaleForKey,
  stringLineMisspelled,
  lookAlikes,
  tabCharacter,
  spaceInBar,
  tuningValue,
  instrumentValue,
  capoValue,
  fretsValue,
  scaleLengthValue,
  gaugesValue,
  referencePitchValue,
  keyValue,
  meterValue,
  tempoValue,
  feelValue,
  frettingValue,
  emptyField,
  repeatedField,
  gaugesThinToThick,
  flatOrB,
  tuningRaisesStrings,
  stringNearBreaking,
  stringSlack,
  labelDisagrees,
  usualLabels,
  upsideDown,
  stringsLeftOut,
  tooManyStrings,
  systemsTogether,
  splitSystem,
  barOutOfLine,
  barSignMissing,
  rowBarOutOfLine,
  partsDiffer,
  unknownSign,
  fretNumber,
  fretPastNeck,
  fretBelowCapo,
  fretBelowString,
  dashBeforeNote,
  unmatchedBracket,
  signWithoutNote,
  signsTogether,
  releaseWithoutBend,
  slideToNowhere,
  hammerOnNotRising,
  pullOffNotFalling,
  slideAgainstSign,
  bendOpenString,
  bendNotRising,
  harmonicNode,
  harmonicAmbiguous,
  rowMisspelled,
  rowWithoutStrings,
  looseRow,
  countOrder,
  countRange,
  countSyllable,
  countFit,
  pickingMark,
  fingersMark,
  endingMark,
  chordName,
  chordDisagrees,
  chordAdds,
  chordOmits,
  chordBass,
  stretchOverReach,
  chordNotStraight,
];

interface CheckOf<K extends keyof Runs> extends Pick<Check, 'code' | 'severity'> {
  readonly run: NonNullable<Runs[K]>;
}

/** The checks that look at one thing, ready to be called. */
function checksOf<K extends keyof Runs>(kind: K): readonly CheckOf<K>[] {
  return CHECKS.flatMap(({ code, severity, run }): CheckOf<K>[] => {
    const own = run[kind];
    return own === undefined ? [] : [{ code, severity, run: own }];
  });
}

export const NEAR_MISS_CHECKS = checksOf('nearMiss');
export const FIELD_CHECKS = checksOf('fields');
export const SYSTEM_CHECKS = checksOf('system');
export const NEIGHBOUR_CHECKS = checksOf('neighbours');
export const PARTS_CHECKS = checksOf('parts');
