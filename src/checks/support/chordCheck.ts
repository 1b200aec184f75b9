import type { Check, Scene, SystemFinding } from '../check';
import { chordFindings, type ChordFinding } from './chordSpan';
import { rewriteMark } from './edits';

/** What a check of one verdict needs beside its words. */
export interface ChordWords extends Pick<Check, 'code' | 'severity' | 'title' | 'examples'> {
  readonly verdict: ChordFinding['verdict'];
  readonly meaning: string;
  readonly mending: string;
}

/** A check that tells of one way in which a written chord differs from what sounds. */
export function chordCheck({
  code,
  severity,
  title,
  verdict,
  meaning,
  mending,
  examples,
}: ChordWords): Check {
  return {
    code,
    severity,
    title,
    help: { group: 'Chords', meaning, mending },
    run: {
      system: (scene) =>
        scene.reading.rows.some(({ row }) => row === 'chords')
          ? chordFindings(scene)
              .filter((found) => found.verdict === verdict)
              .map((found) => findingOf(scene, found))
          : [],
    },
    examples,
  };
}

function findingOf(scene: Scene, { line, start, end, message, suggestion }: ChordFinding): SystemFinding {
  const edits = suggestion === undefined ? undefined : rewriteMark(scene, line, start, end, suggestion);
  return {
    line,
    start,
    end,
    message,
    mends: edits && suggestion !== undefined ? [{ title: `Write ${suggestion}`, edits }] : [],
  };
}
