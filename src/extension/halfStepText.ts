/**
 * A move in half steps in words.
 *
 * @example halfStepText(-2) // 'down 2 half steps'
 */
export function halfStepText(by: number): string {
  const steps = Math.abs(by) === 1 ? '1 half step' : `${Math.abs(by)} half steps`;
  return by < 0 ? `down ${steps}` : `up ${steps}`;
}
