import { formatNoteName, type PitchName } from '../../music/noteName';
import { spellMidi } from '../../music/spelling';
import type { WrittenChord } from '../../music/chord/writtenChord';
import type { Key } from '../../music/key';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf, playedSpelling, soundingSpelling } from '../../notation/headerViews';
import { stringNumber } from '../../instrument/tuning';
import { overChord, ringInKey, ringOver, stricter, type Ring } from './ringRules';
import type { RingingString } from './ringingAnswer';

/** What each open string is to a chord as it is named, which under a full capo is as it is played; none for `N.C.`. */
export function stringsOverChord(header: Header, chord: WrittenChord): readonly RingingString[] | undefined {
  const over = overChord(chord, header.key);
  return over && openStrings(header, (name) => ringOver(name, over));
}

/** What each open string is to a key. */
export function stringsInKey(header: Header, key: Key): readonly RingingString[] {
  return openStrings(header, (name) => ringInKey(name, key));
}

function openStrings(header: Header, judge: (name: PitchName) => Ring): readonly RingingString[] {
  const board = fingerboardOf(header);
  const shift = capoShift(header);
  const played = playedSpelling(header);
  const spelling = soundingSpelling(header);
  return header.tuning.strings.flatMap((_, index) => {
    const [midi, ...partners] = board.pitches(index, 0) ?? [];
    if (midi === undefined) return [];
    const rings = [midi, ...partners].map((one) => judge(spellMidi(one - shift, played)));
    const ring = rings.reduce(stricter);
    return [
      {
        string: stringNumber(header.tuning, index),
        note: formatNoteName(spellMidi(midi, spelling)),
        midi,
        verdict: ring.verdict,
        role: ring.role,
        reason: ring.reason,
      },
    ];
  });
}
