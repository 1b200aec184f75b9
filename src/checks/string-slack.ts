import { formatGauges, type Gauge } from '../instrument/gauges';
import type { SetLoad } from '../instrument/strings/stringLoads';
import { gaugeOfCourse } from '../instrument/strings/usualString';
import { ownGauge, shareWords, strainSentence } from '../instrument/strings/strainWords';
import { suggestedGauge } from '../instrument/strings/suggestGauge';
import { formatNoteName } from '../music/noteName';
import type { FieldGroup } from '../notation/tabDocument';
import type { Check, Finding, Mend } from './check';
import { rangeOf } from './support/edits';
import { groupStrain, setInGroup, type GroupStrain, type Strained } from './support/strain';
import { inWords } from './support/words';

export const stringSlack: Check = {
  code: 'string-slack',
  severity: 'information',
  title: 'A slack string',
  help: {
    group: 'Fields',
    meaning:
      'A string has less than 60 % of the tension that it has in the usual tuning, with the usual set on a neck of the usual length: it may buzz, and it goes sharp where it is struck or pressed hard. 60 % is an engineering value, which `pegbox.strain` sets.',
    mending:
      'Put a thicker string on and write it in `gauges:`; common sizes that pull about as usual are offered.',
  },
  run: {
    fields: (group, _document, settings) => {
      const strain = groupStrain(group, settings);
      return strain ? findings(group, strain) : [];
    },
  },
  examples: {
    raises: [
      'tuning: drop B\n',
      'tuning: standard down 5\n',
      'instrument: bass\ntuning: BEAD\ngauges: 85w 65w 45w 32w\n',
      'scale length: 19 in\n',
    ],
    quiet: [
      'tuning: drop D\n',
      'tuning: open C\n',
      'tuning: drop B\ngauges: 60w 44w 30w 20 15 12\n',
      'instrument: bass\ntuning: drop D\n',
    ],
  },
};

function findings(group: FieldGroup, strain: GroupStrain): readonly Finding[] {
  const slack = strain.strings.filter(({ state }) => state === 'slack');
  const [first] = slack;
  if (!first) return [];
  const { field, header, set } = strain;
  const { lineIndex, line } = field;
  const suggested = suggestedSet(set);
  const message =
    slack.length === 1
      ? strainSentence(first.load, 'slack', {
          scaleLength: header.scaleLength,
          gaugesAre: set.gaugesAre,
          suggested: suggestedGauge(first.load, set.materials),
        })
      : `${listed(slack)} of their usual tension: they may buzz, and go sharp where they are struck or pressed hard.${
          suggested === undefined ? '' : ` The gauges ${suggested} pull about as usual.`
        }`;
  return [
    {
      range: rangeOf(lineIndex, line.valueStart, line.valueStart + line.value.length),
      message,
      mends: suggested === undefined ? [] : [mend(group, suggested)],
    },
  ];
}

/** `Strings 6 (B1) and 5 (E2) have 56 % and 59 %`. */
function listed(slack: readonly Strained[]): string {
  const names = slack.map(
    ({ load }) =>
      `${load.number} (${formatNoteName(load.pitch.name)}, gauge ${ownGauge(load.gauge?.text ?? '')})`,
  );
  const shares = [...new Set(slack.map(({ load }) => shareWords(load.ratio ?? 0)))];
  return `Strings ${inWords(names)} have ${inWords(shares)}`;
}

function mend(group: FieldGroup, gauges: string): Mend {
  return {
    title: `Say that the gauges are ${gauges}, which pull about as usual`,
    preferred: false,
    edits: [setInGroup(group, 'gauges', gauges)],
  };
}

/** The set with a common size for each string that the tuning or the neck has changed; undefined where there is none. */
function suggestedSet(set: SetLoad): string | undefined {
  if (!set.gauges) return undefined;
  const count = set.gauges.length;
  const gauges = set.gauges.map((gauge, index): Gauge => {
    const loads = set.strings.filter(({ number }) => number === count - index);
    const texts = loads.map((load) => {
      const own = ownGauge(gaugeOfCourse(gauge, load.course - 1)?.text ?? gauge.text);
      return suggestedGauge(load, set.materials) ?? own;
    });
    return { ...gauge, text: texts.length === 0 ? gauge.text : texts.join('/') };
  });
  const text = formatGauges(gauges);
  return text === formatGauges(set.gauges) ? undefined : text;
}
