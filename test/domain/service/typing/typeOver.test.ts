import { expect } from 'chai';
import { Document } from '../../../../src/notation/document';
import { typeOver } from '../../../../src/service/typing/typeOver';
import { isText, typed } from './keys';

/* What a key does on a string line. `<|>` is the cursor, `⌫` Backspace, `⌦` Delete. */

/** A system of six strings of sixteen columns; the first line as given. */
function six(first: string, columns = 16): string {
  const rest = ['B3', 'G3', 'D3', 'A2', 'E2'].map((label) => `${label} |${'-'.repeat(columns)}|`);
  return [`E4 |${first}`, ...rest].join('\n');
}

interface Row {
  readonly what: string;
  readonly from: string;
  readonly keys: string;
  readonly to: string;
  /** Columns of the other lines afterwards. */
  readonly columns?: number;
}

const rows: readonly Row[] = [
  {
    what: 'a digit takes the place of a dash',
    from: '<|>----------------|',
    keys: '5',
    to: '5<|>---------------|',
  },
  { what: 'every sign moves on', from: '----<|>------------|', keys: '5h7', to: '----5h7<|>---------|' },
  { what: 'a muted stroke', from: '----<|>------------|', keys: 'X', to: '----x<|>-----------|' },
  { what: 'a dash takes a note away', from: '----<|>7-----------|', keys: '-', to: '-----<|>-----------|' },
  { what: 'an equals sign is a dash', from: '----<|>7-----------|', keys: '=', to: '-----<|>-----------|' },
  {
    what: 'a second digit gets a column of its own',
    from: '<|>----------------|',
    keys: '12',
    to: '12<|>---------------|',
    columns: 17,
  },
  { what: 'the room is given back', from: '<|>----------------|', keys: '12⌫', to: '1<|>---------------|' },
  {
    what: 'a new number over one of two digits gives it back',
    from: '<|>12---------------|',
    keys: '5',
    to: '5<|>---------------|',
    columns: 16,
  },
  {
    what: 'between two digits the second is replaced',
    from: '1<|>2---5-----------|',
    keys: '4',
    to: '14<|>---5-----------|',
    columns: 17,
  },
  { what: 'Backspace leaves a dash', from: '----5<|>-----------|', keys: '⌫', to: '----<|>------------|' },
  {
    what: 'Backspace on dashes goes back',
    from: '----<|>------------|',
    keys: '⌫⌫',
    to: '--<|>--------------|',
  },
  {
    what: 'Backspace stops at the first bar sign',
    from: '<|>----------------|',
    keys: '⌫⌫',
    to: '<|>----------------|',
  },
  {
    what: 'Delete leaves a dash and stays',
    from: '----<|>5-----------|',
    keys: '⌦',
    to: '----<|>------------|',
  },
  {
    what: 'what is selected becomes dashes',
    from: '--<[>5-7<|>-----------|',
    keys: '⌫',
    to: '--<|>--------------|',
  },
  {
    what: 'what is selected makes way for a sign',
    from: '--<[>5-7<|>-----------|',
    keys: '3',
    to: '--3<|>-------------|',
  },
  {
    what: 'a bracket is written though a note follows on its string',
    from: '----<|>------5-----|',
    keys: '(7)',
    to: '----(7)<|>---5-----|',
  },
  {
    what: 'a note is taken out of its bracket',
    from: '----(5-<|>7)-------|',
    keys: '⌦',
    to: '----(5-<|>-)-------|',
  },
  {
    what: 'a bend to a pitch between',
    from: '----<|>--------5---|',
    keys: '7b7.25',
    to: '----7b7.25<|>--5---|',
  },
  {
    what: 'a release keeps the next note of its bar',
    from: '----7b9<|>-----5---|',
    keys: 'r',
    to: '----7b9r<|>7---5---|',
  },
  {
    what: 'a release to a fret of its own',
    from: '----7b9<|>-----5---|',
    keys: 'r6',
    to: '----7b9r6<|>---5---|',
  },
  {
    what: 'a release with no note behind it is only its sign',
    from: '----7b9<|>---------|',
    keys: 'r',
    to: '----7b9r<|>--------|',
  },
  { what: 'Space steps on', from: '----<|>5-----------|', keys: ' ', to: '----5<|>-----------|' },
];

describe('typing over the staff', () => {
  for (const { what, from, keys, to, columns } of rows) {
    it(what, () => {
      const before = /12-|1<\|>2/.test(from) ? 17 : 16;
      expect(typed(six(from, before), keys).text).to.equal(six(to, columns ?? 16));
    });
  }

  it('a bar sign is stepped over, never overwritten', () => {
    const bars = (first: string): string => `E4 |${first}\nB3 |----|----|`;
    expect(typed(bars('----<|>|----|'), '7').text).to.equal(bars('----|7<|>---|'));
    expect(typed(bars('----|<|>----|'), '⌫').text).to.equal(bars('----<|>|----|'));
    expect(typed(bars('-<|>---|----|'), '|').text).to.equal(bars('----|<|>----|'));
  });

  it('behind the last bar sign a bar begins, on all lines and rows', () => {
    expect(typed('E4 |----|<|>\nB3 |----| let ring', '3').text).to.equal(
      'E4 |----|3<|>---|\nB3 |----|----| let ring',
    );
    const counted = (second: string, third: string): string =>
      `count |1   2   |${second}\nE4    |5-------|${third}\nB3    |--------|${second.replaceAll(' ', '-')}`;
    expect(typed(`meter: 2/4\n${counted('', '<|>')}`, '7').text).to.equal(
      `meter: 2/4\n${counted('        |', '7<|>-------|')}`,
    );
  });

  it('a chord is typed by all cursors of a column', () => {
    const marked = six('<|>0---------------|').replaceAll(/^([A-G]\d) \|(?=-)/gm, '$1 |<|>');
    const { text } = typed(marked, '12');
    expect(text.split('\n').map((line) => line.slice(4, 10))).to.deep.equal(Array(6).fill('12<|>-'));
    expect(typed(marked, '12⌫').text).to.equal(typed(marked, '1').text);
  });

  it('rows go along with their columns', () => {
    const marked = 'chords |C       G7      |\nE4     |----<|>------------|\nB3     |0-------1-------|';
    expect(typed(marked, '12').text).to.equal(
      'chords |C        G7      |\nE4     |----12<|>-----------|\nB3     |0--------1-------|',
    );
    expect(typed(marked, '12⌫').text).to.equal(typed(marked, '1').text);
  });

  it('digits that make no fret are refused and told', () => {
    const { text, notices } = typed(six('5<|>---------------|'), '7');
    expect(text).to.equal(six('5<|>---------------|'));
    expect(notices).to.deep.equal(['There is no fret 57: leave a dash between 5 and 7.']);
    expect(typed(six('0<|>---------------|'), '7').notices[0]).to.match(/open string/);
    expect(typed(six('12<|>---------------|', 17), '7').notices[0]).to.match(/at most two digits/);
  });

  it('a key that is no sign changes nothing and is told', () => {
    const { text, notices } = typed(six('5-<|>--------------|'), 'k');
    expect(text).to.equal(six('5-<|>--------------|'));
    expect(notices[0]).to.match(/“k” is no sign/);
  });

  it('a count is written where other notes would begin at another time', () => {
    const { text, notices } = typed(six('-<|>-5---5---------|'), '5');
    expect(text).to.match(/^count \|1e/);
    expect(text).to.contain('E4    |-5<|>-5---5');
    expect(notices[0]).to.match(/count is written/);
  });

  for (const [what, marked] of [
    ['prose', 'Play it <|>twice'],
    ['a field', 'capo: <|>'],
    ['a row', 'count |1<|> 2 |\nE4    |----|'],
    ['a label', 'E<|> |----|'],
    ['the place before the first bar sign', 'E4 <|>|----|'],
    ['a remark', 'E4 |----| let <|>ring'],
    ['a line that is still being written', 'E4 |--<|>'],
    ['an empty line of a string', 'E4 |<|>'],
  ] as const) {
    it(`in ${what} a key is text`, () => {
      for (const key of [{ text: '5' }, { text: 'h' }, 'backspace', 'delete'] as const)
        expect(isText(marked, key), JSON.stringify(key)).to.equal(true);
    });
  }

  it('what is selected over several lines is text', () => {
    const document = new Document('E4 |----|\nB3 |----|');
    const selected = { anchor: { line: 0, character: 6 }, active: { line: 1, character: 6 } };
    expect(typeOver(document, [selected], { text: '5' }).kind).to.equal('text');
  });

  it('text and staff are written at once where cursors stand on both', () => {
    expect(typed('Verse <|>\n\nE4 |<|>----|\nB3 |----|', '5').text).to.equal(
      'Verse 5<|>\n\nE4 |5<|>---|\nB3 |----|',
    );
  });
});
