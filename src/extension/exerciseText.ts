import type { WriteExerciseRequest } from '../service/write/writeRequest';

/**
 * An exercise in a few words.
 *
 * @example exerciseText({ scale: 'D dorian', inPosition: 5, direction: 'up' }) // 'D dorian, position 5, up'
 */
export function exerciseText({ scale, chord, inPosition, octaves, direction }: WriteExerciseRequest): string {
  return [
    ...(scale === undefined ? [] : [scale]),
    ...(chord === undefined ? [] : [`${chord} arpeggio`]),
    ...(inPosition === undefined ? [] : [inPosition === 'open' ? 'open position' : `position ${inPosition}`]),
    ...(octaves === undefined ? [] : [octaves === 1 ? '1 octave' : `${octaves} octaves`]),
    ...(direction === undefined ? [] : [direction]),
  ].join(', ');
}
