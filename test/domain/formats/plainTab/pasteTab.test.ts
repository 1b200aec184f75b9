import { expect } from 'chai';
import { applyEdits } from '../../../../src/cli/applyEdits';
import { pasteTab } from '../../../../src/formats/plainTab/pasteTab';
import { service, settings } from '../../service/cursor';

// Our own texts.

const TAB = ['E|--0--|', 'B|-----|', 'G|-----|', 'D|-----|', 'A|--2--|', 'E|--3--|'].join('\n');
const SONG = 'capo: 2\n\nE4 |0---|\nB3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nE2 |----|\n\n';

function pasted(song: string, text: string): string {
  const place = { line: song.split('\n').length - 1, character: 0 };
  const { edits } = pasteTab(service.open(song, settings), { start: place, end: place }, { text }, settings);
  return applyEdits(song, edits);
}

describe('a tab pasted into a song', () => {
  it('takes the capo of the song where it says nothing of one', () => {
    const after = pasted(SONG, TAB);
    expect(after).to.not.match(/capo: none/);
    expect(service.notes(service.open(after, settings)).map(({ name }) => name)).to.include('F#4');
  });

  it('keeps its own capo where it names one', () => {
    expect(pasted(SONG, `Capo 4\n\n${TAB}`)).to.match(/capo: 4/);
  });
});
