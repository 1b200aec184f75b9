import { findInstrument, GUITAR, INSTRUMENTS } from '../../instrument/instruments';
import type { Instrument } from '../../instrument/instrument';

/** The instrument, or its kin with so many strings. */
export function withStrings(instrument: Instrument, n: number): Instrument | undefined {
  if (instrument.firstFrets.length === n) return instrument;
  const kin: Readonly<Record<string, readonly string[]>> = {
    bass: ['five-string bass', 'six-string bass'],
    guitar: ['seven-string guitar', 'eight-string guitar'],
  };
  return (kin[instrument.name] ?? [])
    .flatMap((name) => findInstrument(name) ?? [])
    .find(({ firstFrets }) => firstFrets.length === n);
}

/** What so many lines are most often for; common practice, no source. */
const USUAL: Readonly<Record<number, readonly string[]>> = {
  4: ['bass', 'ukulele', 'mandolin', 'baritone ukulele'],
  5: ['five-string bass', 'banjo'],
  6: ['guitar'],
};

/**
 * The instruments that so many lines may be for, the likeliest first; the guitar where none has so many strings.
 * @param before what was played last: it goes on where the lines allow it
 */
export function likelyInstruments(n: number, before: Instrument | undefined): Instrument[] {
  const usual = (USUAL[n] ?? []).flatMap((name) => findInstrument(name) ?? []);
  const others = INSTRUMENTS.filter(({ firstFrets }) => firstFrets.length === n);
  const goesOn = before?.firstFrets.length === n ? [before] : [];
  const all = [...new Set([...goesOn, ...usual, ...others])];
  return all.length > 0 ? all : [GUITAR];
}
