/**
 * The handbook table of the trade's tunings, kept apart from the program's own data so that each checks the other.
 * Source of names and steps: common practice, no source, unless marked [S]. [S]: read in guitar and banjo pages
 * (open-tuning and guitar-tuning encyclopedia mirrors, slack-key, lap-steel and 12-string pages). Octaves: from memory.
 * The middle column is what a player counts when tuning by unisons: the fret of each string that gives the next
 * string's open note; negative where the next string is lower.
 */
export interface TableRow {
  readonly row: number;
  readonly instrument: string;
  readonly name: string;
  readonly notes: string;
  readonly frets: readonly number[];
  readonly source: string;
}

const NONE = 'common practice, no source';

function rows(text: string): TableRow[] {
  return text
    .trim()
    .split('\n')
    .map((line) => {
      const [number = '', instrument = '', name = '', notes = '', frets = '', source = ''] = line
        .split('|')
        .map((cell) => cell.trim());
      return {
        row: Number(number),
        instrument,
        name,
        notes,
        frets: frets.split(' ').map(Number),
        source: source === 'S' ? 'read in the cited source' : NONE,
      };
    });
}

export const TUNING_TABLE: readonly TableRow[] = rows(`
1 | guitar | standard | E2 A2 D3 G3 B3 E4 | 5 5 5 4 5 | S
2 | guitar | half-step down | Eb2 Ab2 Db3 Gb3 Bb3 Eb4 | 5 5 5 4 5
3 | guitar | whole-step down | D2 G2 C3 F3 A3 D4 | 5 5 5 4 5
4 | guitar | drop D | D2 A2 D3 G3 B3 E4 | 7 5 5 4 5 | S
5 | guitar | double drop D | D2 A2 D3 G3 B3 D4 | 7 5 5 4 3
6 | guitar | drop C# | C#2 G#2 C#3 F#3 A#3 D#4 | 7 5 5 4 5
7 | guitar | drop C | C2 G2 C3 F3 A3 D4 | 7 5 5 4 5
8 | guitar | drop B | B1 F#2 B2 E3 G#3 C#4 | 7 5 5 4 5
9 | guitar | DADGAD | D2 A2 D3 G3 A3 D4 | 7 5 5 2 5 | S
9 | guitar | D modal | D2 A2 D3 G3 A3 D4 | 7 5 5 2 5 | S
9 | guitar | Dsus4 | D2 A2 D3 G3 A3 D4 | 7 5 5 2 5 | S
10 | guitar | CGCFGC | C2 G2 C3 F3 G3 C4 | 7 5 5 2 5 | S
11 | guitar | DADEAD | D2 A2 D3 E3 A3 D4 | 7 5 2 5 5
11 | guitar | Dsus2 | D2 A2 D3 E3 A3 D4 | 7 5 2 5 5
12 | guitar | open D | D2 A2 D3 F#3 A3 D4 | 7 5 4 3 5 | S
12 | guitar | Vestapol | D2 A2 D3 F#3 A3 D4 | 7 5 4 3 5 | S
13 | guitar | open D minor | D2 A2 D3 F3 A3 D4 | 7 5 3 4 5 | S
13 | guitar | cross-note D | D2 A2 D3 F3 A3 D4 | 7 5 3 4 5 | S
14 | guitar | open E | E2 B2 E3 G#3 B3 E4 | 7 5 4 3 5
15 | guitar | open E minor | E2 B2 E3 G3 B3 E4 | 7 5 3 4 5 | S
15 | guitar | cross-note E | E2 B2 E3 G3 B3 E4 | 7 5 3 4 5 | S
16 | guitar | open G | D2 G2 D3 G3 B3 D4 | 5 7 5 4 3 | S
16 | guitar | Spanish | D2 G2 D3 G3 B3 D4 | 5 7 5 4 3 | S
16 | guitar | taro patch | D2 G2 D3 G3 B3 D4 | 5 7 5 4 3 | S
17 | guitar | open G minor | D2 G2 D3 G3 Bb3 D4 | 5 7 5 3 4
18 | guitar | G6 | D2 G2 D3 G3 B3 E4 | 5 7 5 4 5
18 | guitar | dropped G | D2 G2 D3 G3 B3 E4 | 5 7 5 4 5
19 | guitar | open A | E2 A2 E3 A3 C#4 E4 | 5 7 5 4 3 | S
20 | guitar | open A minor | E2 A2 E3 A3 C4 E4 | 5 7 5 3 4
21 | guitar | open C | C2 G2 C3 G3 C4 E4 | 7 5 7 5 4 | S
22 | guitar | open C minor | C2 G2 C3 G3 C4 Eb4 | 7 5 7 5 3
23 | guitar | C6 | C2 A2 C3 G3 C4 E4 | 9 3 7 5 4
24 | guitar | CGDGCD | C2 G2 D3 G3 C4 D4 | 7 7 5 5 2
24 | guitar | Orkney | C2 G2 D3 G3 C4 D4 | 7 7 5 5 2
25 | guitar | CGDGBD | C2 G2 D3 G3 B3 D4 | 7 7 5 4 3
25 | guitar | C wahine | C2 G2 D3 G3 B3 D4 | 7 7 5 4 3
26 | guitar | DGDF#BD | D2 G2 D3 F#3 B3 D4 | 5 7 4 5 3
26 | guitar | G wahine | D2 G2 D3 F#3 B3 D4 | 5 7 4 5 3
27 | guitar | open F | C2 F2 C3 F3 A3 C4 | 5 7 5 4 3
28 | guitar | open B | B1 F#2 B2 F#3 B3 D#4 | 7 5 7 5 4
29 | guitar | lute | E2 A2 D3 F#3 B3 E4 | 5 5 4 5 5
30 | guitar | all fourths | E2 A2 D3 G3 C4 F4 | 5 5 5 5 5
31 | guitar | all fifths | C2 G2 D3 A3 E4 B4 | 7 7 7 7 7
32 | guitar | new standard | C2 G2 D3 A3 E4 G4 | 7 7 7 7 3
33 | guitar | major thirds | E2 G#2 C3 E3 G#3 C4 | 4 4 4 4 4
34 | guitar | augmented fourths | C2 F#2 C3 F#3 C4 F#4 | 6 6 6 6 6
35 | guitar | high-strung | E3 A3 D4 G4 B3 E4 | 5 5 5 -8 5
35 | guitar | Nashville | E3 A3 D4 G4 B3 E4 | 5 5 5 -8 5
36 | terz guitar | terz | G2 C3 F3 Bb3 D4 G4 | 5 5 5 4 5
37 | requinto | requinto | A2 D3 G3 C4 E4 A4 | 5 5 5 4 5
38 | baritone guitar | baritone B | B1 E2 A2 D3 F#3 B3 | 5 5 5 4 5
39 | baritone guitar | baritone A | A1 D2 G2 C3 E3 A3 | 5 5 5 4 5
40 | six-string bass guitar | octave down | E1 A1 D2 G2 B2 E3 | 5 5 5 4 5
41 | guitar | five-string open G | G2 D3 G3 B3 D4 | 7 5 4 3 | S
42 | seven-string guitar | standard | B1 E2 A2 D3 G3 B3 E4 | 5 5 5 5 4 5
43 | seven-string guitar | drop A | A1 E2 A2 D3 G3 B3 E4 | 7 5 5 5 4 5
44 | Russian seven-string guitar | Russian | D2 G2 B2 D3 G3 B3 D4 | 5 4 3 5 4 3 | S
45 | eight-string guitar | standard | F#1 B1 E2 A2 D3 G3 B3 E4 | 5 5 5 5 5 4 5
45 | eight-string guitar | drop E | E1 B1 E2 A2 D3 G3 B3 E4 | 7 5 5 5 5 4 5
46 | 12-string guitar | standard | E2/E3 A2/A3 D3/D4 G3/G4 B3/B3 E4/E4 | 5 5 5 4 5 | S
47 | bass | standard | E1 A1 D2 G2 | 5 5 5
47 | bass | drop D | D1 A1 D2 G2 | 7 5 5
47 | bass | BEAD | B0 E1 A1 D2 | 5 5 5
48 | five-string bass | standard | B0 E1 A1 D2 G2 | 5 5 5 5
48 | five-string bass | high C | E1 A1 D2 G2 C3 | 5 5 5 5
48 | six-string bass | standard | B0 E1 A1 D2 G2 C3 | 5 5 5 5 5
49 | ukulele | C6 | G4 C4 E4 A4 | -7 4 5
50 | ukulele | low G | G3 C4 E4 A4 | 5 4 5
50 | ukulele | D6 | A4 D4 F#4 B4 | -7 4 5
51 | baritone ukulele | standard | D3 G3 B3 E4 | 5 4 5
52 | tenor guitar | standard | C3 G3 D4 A4 | 7 7 7
52 | tenor banjo | standard | C3 G3 D4 A4 | 7 7 7
52 | mandola | standard | C3/C3 G3/G3 D4/D4 A4/A4 | 7 7 7
53 | mandolin | standard | G3/G3 D4/D4 A4/A4 E5/E5 | 7 7 7
53 | mandolin | cross GDGD | G3/G3 D4/D4 G4/G4 D5/D5 | 7 5 7
54 | octave mandolin | standard | G2/G2 D3/D3 A3/A3 E4/E4 | 7 7 7
54 | Irish bouzouki | standard | G2/G2 D3/D3 A3/A3 D4/D4 | 7 7 5
55 | banjo | open G | G4 D3 G3 B3 D4 | -17 5 4 3 | S
56 | banjo | C tuning | G4 C3 G3 B3 D4 | -19 7 4 3 | S
56 | banjo | double C | G4 C3 G3 C4 D4 | -19 7 5 2
57 | banjo | sawmill | G4 D3 G3 C4 D4 | -17 5 5 2
57 | banjo | open D | F#4 D3 F#3 A3 D4 | -16 4 3 5 | S
58 | plectrum banjo | standard | C3 G3 B3 D4 | 7 4 3
59 | lap steel | open G | G2 B2 D3 G3 B3 D4 | 4 3 5 4 3 | S
60 | lap steel | open A high bass | A2 C#3 E3 A3 C#4 E4 | 4 3 5 4 3 | S
60 | lap steel | open A low bass | E2 A2 E3 A3 C#4 E4 | 5 7 5 4 3 | S
61 | lap steel | C6 | C3 E3 G3 A3 C4 E4 | 4 3 2 3 4 | S
62 | lap steel | A6 | C#3 E3 F#3 A3 C#4 E4 | 3 2 3 4 3 | S
62 | lap steel | E7 | B2 D3 E3 G#3 B3 E4 | 3 2 4 3 5 | S
62 | lap steel | B11 | B2 D#3 F#3 A3 C#4 E4 | 4 3 3 4 3 | S
`);
