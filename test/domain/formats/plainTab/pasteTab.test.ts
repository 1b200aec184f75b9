import { expect } from 'chai';
import { applyEdits } from '../../../../src/cli/applyEdits';
import { pasteTab, type TabPaste } from '../../../../src/formats/plainTab/pasteTab';
import { service, settings } from '../../service/cursor';

// Our own texts.

const TAB = ['E|--0--|', 'B|-----|', 'G|-----|', 'D|-----|', 'A|--2--|', 'E|--3--|'].join('\n');
const SONG = 'capo: 2\n\nE4 |0---|\nB3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nE2 |----|\n\n';
const DADGAD =
  'tuning: DADGAD\ncapo: 2\n\nD4 |0---|\nA3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nD2 |----|\n\n';
const UKULELE = 'instrument: ukulele\ntuning: low G\n\nA4 |0---|\nE4 |----|\nC4 |----|\nG3 |----|\n\n';

interface Pasted extends TabPaste {
  readonly after: string;
  /** What came into the song. */
  readonly part: string;
  readonly words: string;
}

function paste(song: string, text: string): Pasted {
  const place = { line: song.split('\n').length - 1, character: 0 };
  const result = pasteTab(service.open(song, settings), { start: place, end: place }, { text }, settings);
  const after = applyEdits(song, result.edits);
  const words = result.guesses.map((guess) => guess.words).join('\n');
  return { ...result, after, part: after.slice(song.length), words };
}

function lines(labels: readonly string[]): string {
  return labels.map((label, i) => `${label}|--${i}--|`).join('\n');
}

function bare(n: number): string {
  return lines(Array.from({ length: n }, () => ''));
}

describe('a tab pasted into a song', () => {
  it('takes the capo of the song where it says nothing of one', () => {
    const { after } = paste(SONG, TAB);
    expect(after).to.not.match(/capo: none/);
    expect(service.notes(service.open(after, settings)).map(({ name }) => name)).to.include('F#4');
  });

  it('keeps its own capo where it names one', () => {
    expect(paste(SONG, `Capo 4\n\n${TAB}`).after).to.match(/capo: 4/);
  });
});

describe('a tab without labels pasted into a song', () => {
  it('is taken for the tuning that is in force there, and says so', () => {
    const { part, after, words } = paste(DADGAD, bare(6));
    expect(part).to.equal('D|--0--|\nA|--1--|\nG|--2--|\nD|--3--|\nA|--4--|\nD|--5--|\n');
    expect(words).to.equal(
      'The lines had no labels; they are taken for the strings of guitar in DADGAD, which is in force there.',
    );
    const sounding = service.notes(service.open(after, settings)).map(({ name }) => name);
    // Fret 5 of the sixth string, D2, under the capo at fret 2: seven half steps up.
    expect(sounding).to.include('A2');
  });

  it('is taken for the instrument there, of those with as many strings', () => {
    const { part, words } = paste(UKULELE, bare(4));
    expect(part).to.equal('A|--0--|\nE|--1--|\nC|--2--|\nG|--3--|\n');
    expect(words).to.equal(
      'The lines had no labels; they are taken for the strings of ukulele in low G, which is in force there.',
    );
  });

  it('with other strings takes the usual tuning, and says why', () => {
    const { part, words } = paste(DADGAD, bare(4));
    expect(part).to.match(/^instrument: bass\n\nG\|--0--\|\n/);
    expect(words).to.match(/taken for bass, from its 4 lines/);
    expect(words).to.match(/bass in the usual tuning, since the tuning in force there has 6 strings\./);
  });

  it('goes by its own words before what is in force', () => {
    const { part } = paste(DADGAD, `In standard tuning\n\n${bare(6)}`);
    expect(part).to.match(/^tuning: standard\n\nIn standard tuning\n\nE\|--0--\|\n/);
  });

  it('in an empty file is taken for the usual tuning, and nothing is said of one in force', () => {
    expect(paste('', bare(6)).words).to.match(/guitar in the usual tuning\.$/);
    expect(paste('', bare(4)).words).to.match(/bass in the usual tuning\.$/);
  });
});

describe('a tab with labels pasted into a song', () => {
  it('with numbers for labels is in the tuning in force', () => {
    const { part, words } = paste(DADGAD, lines(['1', '2', '3', '4', '5', '6']));
    expect(part).to.match(/^1\|--0--\|/);
    expect(words).to.equal('');
  });

  it('with labels of the tuning in force states nothing', () => {
    const custom = 'tuning: C2 G2 D3 A3 B3 E4\n\n';
    expect(paste(custom, lines(['E', 'B', 'A', 'D', 'G', 'C'])).part).to.match(/^E\|--0--\|/);
  });

  it('with other labels states their tuning, and the one in force again before what follows', () => {
    const song = `${DADGAD}${DADGAD.split('\n').slice(3).join('\n')}`;
    const place = { line: DADGAD.split('\n').length - 1, character: 0 };
    const { edits } = pasteTab(
      service.open(song, settings),
      { start: place, end: place },
      { text: TAB },
      settings,
    );
    const after = applyEdits(song, edits);
    expect(after.match(/^tuning: .+$/gm)).to.deep.equal([
      'tuning: DADGAD',
      'tuning: standard',
      'tuning: DADGAD',
    ]);
    expect(after).to.not.match(/capo: none/);
  });

  it('of a few strings is the neighbouring strings of the tuning in force', () => {
    expect(paste(DADGAD, lines(['D', 'A', 'D'])).part).to.match(/^D3\|--0--\|\nA2\|--1--\|\nD2\|--2--\|/);
  });
});
