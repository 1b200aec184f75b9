import type { Check } from './check';
import { fieldFindings } from './support/fieldValue';

export const gaugesThinToThick: Check = {
  code: 'gauges-thin-to-thick',
  severity: 'information',
  title: 'Gauges from thin to thick',
  help: {
    group: 'Fields',
    meaning:
      'Gauges stand in the order of the tuning, low string first, and this list begins with the thinnest. It is read the other way round, the thickest for the lowest string.',
    mending: 'Write the list from thick to thin.',
  },
  run: {
    fields: (group) =>
      fieldFindings(group, ({ kind, reason }) => kind === 'notice' && reason === 'gauges-reversed').map(
        // The list is read the other way round already: what is written then is what is read now.
        (finding) => ({ ...finding, mends: finding.mends.map((mend) => ({ ...mend, harmless: true })) }),
      ),
  },
  examples: {
    raises: [
      'gauges: 10 13 17 26w 36w 46w\n',
      'gauges: 12 16 24w 32w 42w 53w\n',
      'instrument: bass\ngauges: 45w 65w 85w 105w\n',
    ],
    quiet: [
      'gauges: 46w 36w 26w 17 13 10\n',
      'instrument: banjo\ngauges: 10 23w 16 12 10\n',
      'instrument: bass\ngauges: 105w 85w 65w 45w\n',
    ],
  },
};
