import { expect } from 'chai';
import { readPlainTab } from '../../../../src/formats/plainTab/readPlainTab';
import { service, settings } from '../../service/cursor';

/*
 * Habits met after the snippets were written. Our own texts.
 */

function read(...lines: readonly string[]): { text: string; words: string } {
  const { text, guesses } = readPlainTab(lines.join('\n'), { settings });
  return { text, words: guesses.map((guess) => guess.words).join('\n') };
}

describe('more habits of plain tab', () => {
  it('a colon for every bar line is a bar line and no repeat', () => {
    const { text, words } = read(
      'e:---0-:-3-:',
      'B:---1-:---:',
      'G:-----:---:',
      'D:-----:---:',
      'A:-3---:---:',
      'E:-----:-3-:',
    );
    expect(text).to.match(/^e\|---0-\|-3-\|\nB\|---1-\|---\|\n/);
    expect(words).to.match(/Bar lines and repeat signs of another kind/);
  });

  it('a line with letters that are none of tab stays with the strings beside it, letters and all', () => {
    const { text } = read(
      'E|-------|',
      'B|-------|',
      'G|-------|',
      'D|-------|',
      'A|--2-2--|',
      'E|--2-2--|',
      'B|--0-PM-|',
    );
    expect(text).to.match(/^instrument: seven-string guitar\n\nE\|/);
    expect(text).to.match(/\nB\|--0-PM-\|$/);
  });

  it('dots behind a palm mute stay dots', () => {
    const { text } = read(
      'E|-------|',
      'B|-------|',
      'G|-------|',
      'D|-------|',
      'A|--2-2--|',
      'E|--0-0--|',
      '   PM....',
    );
    expect(text).to.match(/\npalm mute \|[ ]PM\.\.\.\.$/);
  });

  it('three strings whose labels fit no usual tuning are part of the nearest one that has a name', () => {
    const { text } = read('D|-0-3-5-|', 'A|-0-3-5-|', 'D|-0-3-5-|');
    expect(text).to.match(/^tuning: drop D\n\n/);
    const lowest = service.notes(service.open(text, settings)).map(({ name }) => name);
    expect(lowest).to.include('D2');
  });

  it('a system without labels goes on in the tuning of the system before it', () => {
    const lines = (labels: readonly string[]): string[] =>
      labels.map((label, i) => `${label}|--${i === 0 || i === 5 ? '0' : '-'}--|`);
    const bare = lines(['', '', '', '', '', '']);
    const dropD = lines(['e', 'B', 'G', 'D', 'A', 'D']);
    const { text } = read(...bare, '', ...dropD, '', ...bare);
    const bass = service.notes(service.open(text, settings)).filter(({ string }) => string === 6);
    expect(bass.map(({ name }) => name)).to.deep.equal(['E2', 'D2', 'D2']);
  });
});
