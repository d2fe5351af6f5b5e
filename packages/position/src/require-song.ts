import { asErrorOf, type OptionNames, requireOptions } from '@reedplate/pitch';

/** A song of a list, if it has no field that no song has. */
export function requireSong<Song>(song: Song, names: OptionNames<Song>, path: string): Song {
  return asErrorOf('OPTION_UNKNOWN', { path }, () => requireOptions(song, names, 'a song'));
}
