/**
 * For each rule of pegbox.ohm texts that it matches from end to end, and texts that it does not. Rules that match any
 * text have no counter-examples.
 */
export interface RuleExamples {
  readonly is: readonly string[];
  readonly isNot: readonly string[];
}

export const RULE_EXAMPLES: Readonly<Record<string, RuleExamples>> = {
  // ---- lines
  line: {
    is: ['', 'E|0--|', 'capo: 2', '[Verse]', '# note', 'count |1 2|', 'Sing.', '\uFEFFkey: D'],
    isNot: [],
  },
  bom: { is: ['\uFEFF'], isNot: ['', ' '] },
  gap: { is: [' ', '\u00A0', '\u202F', '\t'], isNot: ['', 'a', '\n', '\u3000', '\u200B'] },
  mark: { is: ['a', '-', '|', '東'], isNot: ['', ' ', '\t', '\u00A0', 'ab'] },
  blankLine: { is: ['', '   ', '\t\u00A0'], isNot: ['.', ' -'] },
  commentLine: { is: ['#', '# softly', '  # |--0--|'], isNot: ['softly # here', '', '[#]'] },
  proseLine: { is: ['', 'Sing.', 'E|0--|'], isNot: [] },
  sectionLine: {
    is: ['[Verse]', '  [Verse 1] x2', '[a|b]'],
    isNot: ['[]', '[Verse', 'Verse]', '[a](b)', '[a]b'],
  },
  sectionName: { is: ['Verse', ' ', '[x'], isNot: ['', 'a]'] },
  sectionTail: { is: ['', ' x2', '\tsoftly'], isNot: ['x2', '(there)'] },

  // ---- string lines
  stringLine: {
    is: [
      'e|--0--2--|',
      'b |--3--|',
      'bb3|----|',
      'E2/E3|0---|',
      '14|0---|',
      'D |0|',
      'E|',
      'E||--0--||',
      'E|--5q--|',
      'E│--0--2--│',
      'E|––0––2––|',
      'E|--0--| see bar 3 | 4',
      'E|--0--|x3',
      '  A2 |5h7-(5h7)-<12>-7b1/2~-|:|',
    ],
    isNot: [
      '15|0---|',
      '0|0---|',
      '1|2|3',
      '1 | something',
      'A | D | E | A |',
      'G|C|G|D|',
      '|--0--|',
      'E:--0--|',
      'H|--0--|',
      'E--0--|',
      'E|0',
    ],
  },
  label: {
    is: ['E', 'e', 'Bb3', 'F#', 'G♯', 'E2/E3', 'D/d', '1', '14'],
    isNot: ['', 'H', '15', '0', 'E10', 'E2/', 'Ebb'],
  },
  noteLabel: { is: ['A', 'bb', 'C#4', 'e♭'], isNot: ['h', 'A##', 'A22', '4'] },
  letter_: { is: ['A', 'G', 'a', 'g'], isNot: ['H', 'h', '', 'AB'] },
  accidental: { is: ['#', 'b', '♯', '♭'], isNot: ['##', 'x', ''] },
  stringNumber: { is: ['1', '9', '10', '14'], isNot: ['0', '15', '01', '141'] },
  run: {
    is: ['|', '|0--|', '|--0', '|0|', '|:0---:|', '|x|2|', '||--||', '│––│'],
    isNot: ['', '0--|', '|C|', '|0', '|0 |'],
  },
  dashedRun: { is: ['-', '0-', '5q-', ':-', '|-'], isNot: ['', '0', 'q-', '0|'] },
  solidRun: { is: ['0|', 'x|2| ', '(5)|'], isNot: ['0', 'q|', '|'] },
  opening: {
    is: ['-', '–', ':', '|', '0', 'x', 'X', '(', '.', '<1', 'h1', '/', '\\'],
    isNot: ['q', 'h', '<', 'b', '~', ')', ' '],
  },
  openHarmonic: { is: ['<1'], isNot: ['<', '<x', '1'] },
  joinedNumber: { is: ['h7', 't1', 'r5'], isNot: ['h', '7', 'hh'] },
  // The last bar sign is none: what follows it is a remark.
  item: { is: ['--', '12', '<12>', 'q', 'b1/4'], isNot: ['', ' ', '5q', '|', ':|'] },
  trailing: { is: ['', 'x3', 'x3 ', '\t'], isNot: ['-', 'a-', 'a|'] },
  remark: { is: ['', ' x3', 'anything - at | all'], isNot: [] },
  barSign: {
    is: ['|', '||', '|:', ':|', ':|:', '||:', ':||', ':||:', '│', '¦'],
    isNot: ['', ':', '|||', '::|', '|::'],
  },
  bar: { is: ['|', '│', '┃', '¦'], isNot: ['', '!', 'l', '||'] },
  dash: { is: ['-', '–', '—', '─', '−'], isNot: ['', '_', '=', '--'] },
  sign: {
    is: ['---', '.', '<12>', '36', 'x', '(', ')', 'tr', 'pb', 'b9', 'h', '//', '~~'],
    isNot: ['', '|', 'q', '5h'],
  },
  dashes: { is: ['-', '---', '-–—'], isNot: ['', '-0'] },
  stop: { is: ['.'], isNot: ['', '..', ','] },
  number: { is: ['0', '12', '123'], isNot: ['', '1.5', '-1'] },
  mute: { is: ['x', 'X'], isNot: ['', 'xx', '×'] },
  open: { is: ['('], isNot: ['', '[', '(('] },
  close: { is: [')'], isNot: ['', ']', '))'] },
  harmonic: { is: ['<12>', '<3.2>'], isNot: ['<>', '<12', '12>', '<.5>', '<3.>'] },
  decimal: { is: ['7', '7.5', '10.25'], isNot: ['', '.5', '7.', '7.5.1'] },
  join: { is: ['h', 'p', 't', 'r'], isNot: ['', 'H', 's', 'hp'] },
  joinSign: { is: ['h', 'p', 't', 'r'], isNot: ['', 'T', 'b'] },
  trill: { is: ['tr'], isNot: ['t', 'r', 'tr7'] },
  slide: { is: ['/', '\\', '////'], isNot: ['', '|', '-/'] },
  slideSign: { is: ['/', '\\'], isNot: ['', '//'] },
  bend: { is: ['b', 'b9', 'b1/2', 'b3/4', 'b7.5'], isNot: ['', 'B', 'b1/3', 'b1/25', 'pb'] },
  preBend: { is: ['pb', 'pb9', 'pb1/4'], isNot: ['', 'p', 'b9', 'pb1/5'] },
  bendAmount: { is: ['1/4', '1/2', '3/4', '9', '7.5', '12'], isNot: ['', '1/3', '2/4', '1/45', '.5'] },
  vibrato: { is: ['~', '~~~'], isNot: ['', '-', 'v'] },
  junk: { is: ['q', '=', '東', '<'], isNot: ['', '-', '|', '5', 'h', ' ', 'qq'] },

  // ---- rows
  rowLine: {
    is: ['count |1 & 2 & |', 'PM |----  |', 'Lyrics|oh', 'cuont |1 |', 'ring-out |--|', 'palm mute|--'],
    isNot: ['count 1 & 2', 'E |1', '3|', '|1 2|', 'two words |', 'count: |1'],
  },
  rowWord: {
    is: ['count', 'PM', 'palm mute', 'ring', "let's", 'cuont'],
    isNot: ['', 'E', 'bb3', '3', 'two words', 'a'],
  },
  knownRow: {
    is: ['palm mute', 'pm', 'PM', 'count', 'Chords', 'words', 'lyrics', 'picking', 'fingers', 'ending'],
    isNot: ['ring', 'counts', 'palm', ''],
  },
  word: { is: ['ab', 'ring-out', "o'r", 'a1'], isNot: ['a', '1a', '-ab', 'a b'] },
  wordMark: { is: ['a', '1', '-', "'", 'é'], isNot: ['', ' ', '|', '_'] },

  // ---- fields
  fieldLine: {
    is: ['capo: 2', 'Capo : 2', '  scale length: 648 mm', 'part:', 'TIME:\t4/4', 'pitch:\u00A0442'],
    isNot: ['capo 2', 'capo:2', 'scale: D', 'tunning: DADGAD', 'my capo: 2', ': 2', 'scalelength: 648 mm'],
  },
  fieldTail: { is: ['', ' 2', '\t2 '], isNot: ['2', ':'] },
  fieldName: {
    is: [
      ...['title', 'by', 'remark', 'instrument', 'tuning', 'capo', 'frets', 'scale length', 'gauges'],
      ...['reference pitch', 'pitch', 'key', 'meter', 'time', 'tempo', 'feel', 'fretting', 'part', 'TITLE'],
    ],
    isNot: ['', 'scale', 'capos', 'name'],
  },

  // ---- values; more of them, held against their readers, in fieldValues.table.ts
  titleValue: { is: ['Lantern Lane', '-'], isNot: [''] },
  byValue: { is: ['The Ferry Choir'], isNot: [''] },
  remarkValue: { is: ['slowly: as the tide'], isNot: [''] },
  partValue: { is: ['low guitar', '2'], isNot: [''] },
  instrumentValue: { is: ['guitar', '12-string guitar'], isNot: [''] },
  tuningValue: {
    is: ['standard', 'open E -2', 'DADGAD', 'E2/E3 A2/A3', 'open E (E B E G# B E)'],
    isNot: ['', 'DADGAD (', 'open E )', 'open E (H)'],
  },
  tuningPlain: { is: ['standard', 'open E -2', 'DADGAD'], isNot: ['', 'a (b)'] },
  tuningHead: { is: ['open E ', 'DADGAD'], isNot: ['', '('] },
  tuningName: { is: ['standard', 'half step down'], isNot: ['', '(', 'a)'] },
  noteList: {
    is: ['E', 'EADGBE', 'D-A-D', 'E2, A2; D3', ' G#3-14c '],
    isNot: ['', '-', 'H', 'E10', 'E/', 'E2/E3/E4'],
  },
  noteGap: { is: [' ', ',', ';', '-', '–', '−'], isNot: ['', '/', '.', '  '] },
  courseNote: { is: ['E2', 'E2/E3', 'g4'], isNot: ['', 'E/', '/E', 'E A'] },
  pitch: {
    is: ['E', 'G#3', 'Bb', 'bb', 'e𝄫2', 'G#3-14c', 'A+2 cents', 'F##'],
    isNot: ['', 'H', 'E22', 'E-2000c', '3'],
  },
  pitchSign: { is: ['#', 'b', '♯', '♭', '##', 'bb', '𝄪'], isNot: ['', 'x', '#b'] },
  doubleFlat: { is: ['bb'], isNot: ['b', 'bbb', '♭♭'] },
  octave: { is: ['0', '9'], isNot: ['', '10', '-1'] },
  cents: {
    is: ['-14c', '+2.5 cents', '−3¢', '+9ct', '-100cents'],
    isNot: ['14c', '-c', '-14', '-14 c', '-1400c'],
  },
  centsSign: { is: ['+', '-', '−'], isNot: ['', '–'] },
  centsWord: { is: ['c', 'C', 'cents', ' cent', 'ct', '¢'], isNot: ['', ' c', 'sent'] },
  tuningSteps: {
    is: [
      'standard -2 0 0 0 -2 -2',
      'open E -2',
      'standard down 1 step',
      'DADGAD half a step down',
      'standard, -2',
    ],
    isNot: ['-2', 'standard', 'standard 2', 'standard down', 'standard-2', ''],
  },
  stepsBase: { is: ['standard', 'open E'], isNot: ['', 'standard -2', 'a down 1'] },
  stepGap: { is: [' ', ',', '\t'], isNot: ['', '-'] },
  steps: {
    is: ['-2', '0', '0 2', 'down 1', 'a step up', 'down by two whole steps'],
    isNot: ['', '2', 'down', 'step'],
  },
  stepsUp: { is: ['half a step up', 'step down', '2 frets lower'], isNot: ['2 down', 'up', 'step'] },
  stepsWay: {
    is: ['down 1', 'up by 1 1/2 steps', 'down a whole step', 'lower half-step'],
    isNot: ['down', '1 down'],
  },
  stepsList: {
    is: ['-2', '+1', '0', '0 0 -2', '-1, -1', '-1 step', '1 2 frets'],
    isNot: ['', '1', '--1', 'a'],
  },
  stepNumber: { is: ['1', '-2', '+0.5', '−3'], isNot: ['', '-', '1-'] },
  stepDecimal: { is: ['1', '0.5'], isNot: ['', '.5', '-1'] },
  stepSign: { is: ['+', '-', '–', '−'], isNot: ['', '±'] },
  stepWay: { is: ['down', 'UP', 'lower', 'higher'], isNot: ['', 'downwards', 'raise'] },
  stepAmount: {
    is: ['1', '1.5', '1 1/2', '1/2', '½', '1½', 'half a', 'a', 'three'],
    isNot: ['', 'half', 'thirteen', '/2'],
  },
  article: { is: ['a', 'an'], isNot: ['', 'the'] },
  stepWord: { is: ['one', 'Twelve', 'an'], isNot: ['', 'thirteen', '1'] },
  stepUnit: {
    is: ['step', 'half steps', 'half-step', 'whole tone', 'semitones', 'frets', 'octave'],
    isNot: ['', 'halves'],
  },
  stepUnitName: { is: ['step', 'wholestep', 'full step'], isNot: ['steps', 'semi tone'] },
  stepUnitGap: { is: [' ', '-'], isNot: ['', '  '] },
  stepSize: { is: ['half', 'whole', 'Full'], isNot: ['', 'quarter'] },
  stepNoun: { is: ['step', 'tone'], isNot: ['', 'steps'] },
  capoValue: {
    is: [
      '3',
      '3rd fret',
      'none',
      '2 on 5 4 3',
      '2 on 5-3',
      'at the 2nd fret on strings 5, 4 and 3',
      '2 on all',
    ],
    isNot: ['', 'three', '2 on', '2 on x', '-2', '2 5 4 3', 'iii', '2 on 5-'],
  },
  capoNone: { is: ['none', 'No Capo', 'off', '0'], isNot: ['', 'nothing'] },
  capoPlace: { is: ['3', 'on 3', 'on the 3rd fret', 'fret 3'], isNot: ['', 'on'] },
  capoFret: { is: ['3', '3rd', '3rd fret', 'at the 3rd fret'], isNot: ['', 'third', '3rdfret'] },
  capoAt: { is: ['at', 'fret', 'at fret'], isNot: ['', 'on'] },
  capoThe: { is: ['the'], isNot: ['', 'a'] },
  capoOrdinal: { is: ['st', 'nd', 'rd', 'th'], isNot: ['', 's'] },
  capoStringsWord: { is: ['strings ', 'the string ', 'the '], isNot: ['', 'strings'] },
  capoStrings: {
    is: ['all', 'all strings', 'every string', '5', '5 4 3', '5-3', '5, 4 and 3', '6 to 4'],
    isNot: ['', 'x', '5-', 'and'],
  },
  capoString: { is: ['5', '5-3', '6 to 4', '5 – 3'], isNot: ['', '-3', '5 3'] },
  capoTo: { is: ['-', '–', '—', 'to'], isNot: ['', '/'] },
  capoStringGap: { is: [' ', ',', '&', '+', 'and'], isNot: ['', '-'] },
  fretsValue: { is: ['22', '22 frets', '1 fret'], isNot: ['', 'frets', '22 bars', '-1', '2.5'] },
  scaleLengthValue: {
    is: ['648 mm', '64,8 cm', '25.5 in', '25 1/2 in', '25-1/2"', '25.5 inches.', '650millimetres'],
    isNot: ['', '648', 'mm', '25.5 ft', '.5 in', '25 1/ in'],
  },
  lengthUnit: { is: ['mm', 'cm', 'in', 'Inches', 'millimetre', '"', '″'], isNot: ['', 'm', 'ft'] },
  inchMark: { is: ['"', '”', '″'], isNot: ['', "'"] },
  gaugesValue: {
    is: ['46w 36w 26w 17 13 10', '.046w, .036', '0.26 mm', '10-13-17', '47w/27w 10/10', '46 w 36 w'],
    isNot: ['', 'w46', '46w36', '10 thin', '10/', 'a b'],
  },
  gaugeGap: { is: [' ', ',', ';', '-'], isNot: ['', '/'] },
  courseGauge: { is: ['46w', '47w/27w'], isNot: ['', '47w/', '/27'] },
  gauge: {
    is: ['10', '46w', '.010', '0.26 mm', '46 wound', '46w mm', '10 plain'],
    isNot: ['', 'w', '10x', '10 mm in'],
  },
  gaugeNumber: { is: ['10', '.010', '0.26'], isNot: ['', '.', '1.', '1.2.3'] },
  gaugeUnit: { is: ['mm', 'in', '"'], isNot: ['', 'cm'] },
  winding: { is: ['w', 'wound', 'p', 'plain', 'W'], isNot: ['', 'x'] },
  referencePitchValue: {
    is: ['442', 'A4 = 442 Hz', 'a=432', '415.3 hertz'],
    isNot: ['', 'A4 =', 'A5 = 880', '442 Hz A4', 'Hz', '4,40'],
  },
  hertz: { is: ['Hz', 'hertz'], isNot: ['', 'kHz'] },
  keyValue: {
    is: ['D', 'E minor', 'Em', 'D mixolydian', 'Bb', 'F# dor', 'B flat major', 'Dmaj', 'A-minor', 'C key'],
    isNot: ['', 'H', 'minor', 'Dmi', 'D##', 'D 7', '1'],
  },
  keySign: { is: ['#', 'b', '♭', 'B'], isNot: ['', '##', 'x'] },
  signWord: { is: ['flat', 'Sharp'], isNot: ['', 'natural'] },
  mode: { is: ['m', 'M', 'min', 'min.', 'major', 'major key', 'mixolydian'], isNot: ['', 'mi', 'm.', '7'] },
  meterValue: { is: ['4/4', '6 / 8', '12/16'], isNot: ['', '4', '4/', '/4', '4-4', '444/4', 'common'] },
  tempoValue: {
    is: [
      '96',
      '96.5',
      '96 bpm',
      'dotted quarter = 60',
      'quarter note=96',
      '96 beats a minute',
      'eighth notes = 180 BPM',
    ],
    isNot: ['', 'fast', '= 60', 'quarter 60', '-60', 'dotted = 60', 'crotchet = 60', '96 per minute'],
  },
  tempoNote: { is: ['quarter', 'dotted half', 'dotted-eighth note'], isNot: ['', 'dotted', 'crotchet'] },
  noteLength: { is: ['whole', 'half', 'Quarter', 'eighth', 'sixteenth'], isNot: ['', 'third'] },
  tempoWord: { is: ['bpm', 'beats a minute', 'beat per minute'], isNot: ['', 'bps', 'beats minute'] },
  tempoPer: { is: ['a', 'per'], isNot: ['', 'each'] },
  feelValue: {
    is: ['straight', 'swing', 'Swing  sixteenths'],
    isNot: ['', 'shuffle', 'swing eighths', 'swingsixteenths'],
  },
  frettingValue: { is: ['fingers', 'slide', 'SLIDE'], isNot: ['', 'finger', 'slides'] },
};
