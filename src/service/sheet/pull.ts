import type { PullOf } from '../../instrument/retuning/retuningOrder';
import { frequencyOf } from '../../music/frequency';

/**
 * How hard a string pulls where the set is not known: as the square of its frequency, T = μ(2Lf)² (Mersenne, Taylor),
 * all strings weighing the same. Right for what becomes of one string, rough for what becomes of a set.
 */
export const PULL_BY_PITCH: PullOf = ({ pitches }) =>
  pitches.reduce((sum, { midi }) => sum + frequencyOf(midi) ** 2, 0);
