import type { Option } from './command';

export const JSON_OPTION: Option = { name: 'json', help: 'answer as JSON' };
export const TUNINGS: Option = {
  name: 'tunings',
  value: 'FILE',
  help: 'your own tunings: a JSON file of names and values, such as {"harbour": "C2 G2 D3 G3 B3 D4"}',
};
export const LINES: Option = {
  name: 'lines',
  value: 'A-B',
  help: 'only the systems on these lines, counted from 1, such as 12-20',
};
export const KEEP: Option = {
  name: 'keep',
  value: 'sound|shapes',
  help: 'keep the sound, so that frets move (the default), or the shapes, so that the sound moves',
};
export const OBJECTIVE: Option = {
  name: 'objective',
  value: 'total|hardest',
  help: 'the least effort in all (the default), or the hardest step of each section as easy as can be',
};
export const ALTERNATIVES: Option = {
  name: 'alternatives',
  value: 'N',
  help: 'how many ways to give in all, 1 to 3; the others stand in the JSON answer',
};
