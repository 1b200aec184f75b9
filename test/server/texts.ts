/** A short piece of our own without a mistake. */
export const LANTERN = `title:  Lantern Lane
tuning: DADGAD
key:    D

[Verse]
D4 |0-------0-------|
A3 |----------------|
G3 |----------------|
D3 |----4-------4---|
A2 |----------------|
D2 |0-------0-------|
`;

/** The same with a capo that no one can read. */
export const BAD_CAPO = LANTERN.replace('key:    D', 'capo:   banana');

/** The same with a capo whose word is misspelled, which a mend puts right. */
export const MISSPELLED = LANTERN.replace('key:    D', 'capoo:  2');

/** Line and character of the first fret 4 in LANTERN: D3 and four half steps is F♯3. */
export const FRET_4 = { line: 8, character: 8 };

/** A letter outside the basic plane takes two UTF-16 units. */
export const CLEF = '\u{1D11E}';
