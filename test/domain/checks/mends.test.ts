import assert from 'node:assert/strict';
import { checkDocument } from '../../../src/checks/checkDocument';
import { CHECKS } from '../../../src/checks/checks';
import type { Diagnostic } from '../../../src/checks/check';
import { Document } from '../../../src/notation/document';
import { applyMend } from './apply';
import { SETTINGS } from './marked';

const check = (text: string): readonly Diagnostic[] => checkDocument(new Document(text), SETTINGS);

/** The frets of all notes, `x` for muted ones, but not of those that a diagnostic is about. */
function frets(text: string, but?: Diagnostic): string[] {
  return new Document(text).systems.flatMap(({ firstLine, reading: { notes } }) =>
    notes
      .filter(({ line, start, end }) => {
        if (but?.range.start.line !== firstLine + line) return true;
        return end <= but.range.start.character || start >= but.range.end.character;
      })
      .map(({ kind, fret }) => `${kind} ${fret ?? ''}`),
  );
}

function missing(all: readonly string[], from: readonly string[]): string[] {
  const rest = [...from];
  return all.filter((item) => {
    const at = rest.indexOf(item);
    if (at >= 0) rest.splice(at, 1);
    return at < 0;
  });
}

describe('mends', () => {
  it('keep every note that the message is not about', () => {
    let mends = 0;
    for (const { code, examples } of CHECKS) {
      for (const text of examples.raises) {
        for (const found of check(text).filter((item) => item.code === code)) {
          for (const mend of found.mends) {
            mends += 1;
            const mended = applyMend(text, mend);
            assert.deepEqual(
              missing(frets(text, found), frets(mended)),
              [],
              `${code}, ${mend.title}: ${mended}`,
            );
          }
        }
      }
    }
    assert.ok(mends > 200, `mends were applied: ${mends}`);
  });

  it('have edits that stand last place first, and no two titles alike', () => {
    for (const { examples } of CHECKS) {
      for (const text of examples.raises) {
        for (const { mends } of check(text)) {
          assert.equal(new Set(mends.map(({ title }) => title)).size, mends.length);
          assert.ok(mends.filter(({ preferred }) => preferred).length <= 1);
          for (const mend of mends) applyMend(text, mend);
        }
      }
    }
  });

  const cases: readonly {
    readonly what: string;
    readonly text: string;
    readonly code: string;
    readonly title: string;
    readonly mended: string;
  }[] = [
    {
      what: 'a split takes a dash that follows',
      text: 'B|--2-----|\nG|--45----|\n',
      code: 'fret-past-neck',
      title: 'Write 4-5',
      mended: 'B|--2-----|\nG|--4-5---|\n',
    },
    {
      what: 'where no dash follows all lines grow, rows too',
      text: 'chords |G  D|\nB      |-2--|\nG      |--45|\n',
      code: 'fret-past-neck',
      title: 'Write 4-5',
      mended: 'chords |G  D |\nB      |-2---|\nG      |--4-5|\n',
    },
    {
      what: 'a longer neck is declared with the fields that hold',
      text: 'title:  Gate\ntuning: DADGAD\n\nG|--23----|\n',
      code: 'fret-past-neck',
      title: 'Say that the neck has 23 frets',
      mended: 'title:  Gate\ntuning: DADGAD\nfrets:  23\n\nG|--23----|\n',
    },
    {
      what: 'one line is relabelled',
      text: 'tuning: DADGAD\n\nD4|0-|\nA3|--|\nG3|--|\nD3|--|\nA2|--|\nE2|--|\n',
      code: 'label-disagrees',
      title: 'Label this line D2',
      mended: 'tuning: DADGAD\n\nD4|0-|\nA3|--|\nG3|--|\nD3|--|\nA2|--|\nD2|--|\n',
    },
    {
      what: 'the tuning is changed where it is written, by its name',
      text: 'tuning: DADGAD\n\nE|0-|\nB|--|\nG|--|\nD|--|\nA|--|\nD|--|\n',
      code: 'label-disagrees',
      title: 'Change the tuning to drop D',
      mended: 'tuning: drop D\n\nE|0-|\nB|--|\nG|--|\nD|--|\nA|--|\nD|--|\n',
    },
    {
      what: 'a tuning is written where there is none',
      text: 'D|0-|\nA|--|\nG|--|\nD|--|\nA|--|\nD|--|\n',
      code: 'label-disagrees',
      title: 'Change the tuning to DADGAD',
      mended: 'tuning: DADGAD\n\nD|0-|\nA|--|\nG|--|\nD|--|\nA|--|\nD|--|\n',
    },
    {
      what: 'the tuning of its own part is changed',
      text: 'tuning: DADGAD\n\npart: low\ntuning: open G\n\npart: high\n\nE|0-|\nB|--|\nG|--|\nD|--|\nA|--|\nD|--|\n',
      code: 'label-disagrees',
      title: 'Change the tuning to drop D',
      mended:
        'tuning: drop D\n\npart: low\ntuning: open G\n\npart: high\n\nE|0-|\nB|--|\nG|--|\nD|--|\nA|--|\nD|--|\n',
    },
    {
      what: 'seven lines are given the tuning that their labels spell',
      text: 'title: Gate\n\nE|0-|\nB|--|\nG|--|\nD|--|\nA|--|\nE|--|\nB|--|\n',
      code: 'too-many-strings',
      title: 'Change the tuning to B E A D G B E',
      mended: 'title: Gate\ntuning: B E A D G B E\n\nE|0-|\nB|--|\nG|--|\nD|--|\nA|--|\nE|--|\nB|--|\n',
    },
    {
      what: 'wider labels keep bars in a row',
      text: 'tuning: half step down\n\nwords|la  |\nE|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      code: 'usual-labels',
      title: 'Label all lines by the tuning',
      mended:
        'tuning: half step down\n\nwords |la  |\nEb|0---|\nBb|----|\nGb|----|\nDb|----|\nAb|----|\nEb|----|\n',
    },
    {
      what: 'a system is turned over, its rows stay',
      text: 'count |1 2 3 4 |\nE2    |0-------|\nA2    |--2-----|\nD3    |----2---|\nG3    |--------|\nB3    |--------|\nE4    |--------|\n',
      code: 'upside-down',
      title: 'Turn the system over',
      mended:
        'count |1 2 3 4 |\nE4    |--------|\nB3    |--------|\nG3    |--------|\nD3    |----2---|\nA2    |--2-----|\nE2    |0-------|\n',
    },
    {
      what: 'a bar sign is moved by a dash',
      text: 'B|0-------|2-----|\nG|--2----|----3-|\nD|--------|------|\n',
      code: 'bar-out-of-line',
      title: 'Move the bar sign into line',
      mended: 'B|0-------|2-----|\nG|--2-----|----3-|\nD|--------|------|\n',
    },
    {
      what: 'look-alikes of all lines are written plainly',
      text: 'A│--0--│\nE|––2––|\n',
      code: 'look-alikes',
      title: 'Write plain - and | in this system',
      mended: 'A|--0--|\nE|--2--|\n',
    },
    {
      what: 'lines without labels are labelled by the tuning',
      text: 'instrument: bass\n\n|--0--|\n|--2--|\n|--2--|\n|--0--|\n',
      code: 'string-line-misspelled',
      title: 'Label the 4 lines by the tuning',
      mended: 'instrument: bass\n\nG|--0--|\nD|--2--|\nA|--2--|\nE|--0--|\n',
    },
    {
      what: 'H is B',
      text: 'E|--0--|\nH|--1--|\nG|--0--|\nD|--2--|\nA|--3--|\nE|-----|\n',
      code: 'string-line-misspelled',
      title: 'Label the line by the tuning',
      mended: 'E|--0--|\nB|--1--|\nG|--0--|\nD|--2--|\nA|--3--|\nE|-----|\n',
    },
    {
      what: 'a chord is renamed and the next one stays in its column',
      text: 'chords |Dm  G   |\nE      |2---3---|\nB      |3---0---|\nG      |2---0---|\nD      |0---0---|\nA      |----2---|\nE      |----3---|\n',
      code: 'chord-disagrees',
      title: 'Write D',
      mended:
        'chords |D   G   |\nE      |2---3---|\nB      |3---0---|\nG      |2---0---|\nD      |0---0---|\nA      |----2---|\nE      |----3---|\n',
    },
  ];
  for (const { what, text, code, title, mended } of cases) {
    it(what, () => {
      const mends = check(text)
        .filter((item) => item.code === code)
        .flatMap((item) => item.mends);
      const mend = mends.find((item) => item.title === title);
      assert.ok(mend, `${title} is offered, not only ${mends.map((item) => item.title).join('; ')}`);
      assert.equal(applyMend(text, mend), mended);
    });
  }
});
