import type { Problem } from '../../notation/reading';
import { numbersFact, type Scene, type SystemMend } from '../check';
import { rewrite, stringLineAt } from './edits';

/** The harmonics that a sign may mean, as mends; a place below the nut is none. */
export function harmonicMends(scene: Scene, problem: Problem): readonly SystemMend[] {
  const { line, start, end } = problem;
  const token = stringLineAt(scene, line)?.tokens.find(
    (sign) => sign.kind === 'harmonic' && sign.start >= start && sign.end <= end,
  );
  if (!token) return [];
  return numbersFact(problem, 'choices').flatMap((choice) => {
    const edits = choice > 0 ? rewrite(scene, line, token.start, token.end, `<${choice}>`) : undefined;
    return edits ? [{ title: `Write <${choice}>`, edits }] : [];
  });
}
