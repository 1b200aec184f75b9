/**
 * The usual cautions for a tuning that raises strings, or undefined for one that raises none.
 * `raisesBy` is the most half steps by which any string goes above the tuning it was strung for.
 * Tension grows with the square of the pitch, T = μ(2Lf)² (Mersenne, Taylor): 2^(k/6) for k half steps.
 * The advice itself is common practice, no source.
 * @example retuningCaution(2) // 'This tuning raises strings by up to 2 half steps, …'
 */
export function retuningCaution(
  raisesBy: number,
  which: 'This tuning raises' | 'Some of these tunings raise' = 'This tuning raises',
): string | undefined {
  if (!(raisesBy > 0)) return undefined;
  const steps = Math.round(raisesBy * 100) / 100;
  const tension = Math.round((2 ** (raisesBy / 6) - 1) * 100);
  return (
    `${which} strings by up to ${steps} ${steps === 1 ? 'half step' : 'half steps'}, about ${tension} % more tension. ` +
    'Tune up slowly and keep your eyes and face away from the strings: a string can break. ' +
    'The string maker’s figures decide how far a string may go; lighter strings, or tuning down with a capo, ask less. ' +
    'Ask a luthier before you raise a whole set or leave an instrument tuned higher than it was built for.'
  );
}
