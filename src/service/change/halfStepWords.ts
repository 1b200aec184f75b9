/** `up 2 half steps`, `down 1 half step`. */
export function halfStepWords(halfSteps: number): string {
  const size = Math.abs(halfSteps);
  return `${halfSteps < 0 ? 'down' : 'up'} ${size} half ${size === 1 ? 'step' : 'steps'}`;
}
