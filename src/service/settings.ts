import { USUAL_LIMITS } from '../instrument/strings/limits';
import type { Settings } from './records';

/** What holds until the user sets something else. 130 mm is an engineering value: a wide stretch of an adult hand. */
export const DEFAULT_SETTINGS: Settings = {
  reach: 130,
  thumb: false,
  tunings: {},
  strain: USUAL_LIMITS,
  sectionLens: false,
  severities: {},
};
