/** What the command reads from and writes to: the real terminal, or a test's stand-in. */
export interface Terminal {
  /** Writes to standard output. */
  readonly out: (text: string) => void;
  /** Writes to standard error. */
  readonly err: (text: string) => void;
  /** Whether output goes to a screen that shows colour. */
  readonly colour: boolean;
  /** Columns that a line of the print may take. */
  readonly width: number;
  /** Reads a text file, `-` for standard input; throws a typed error. */
  readonly readText: (path: string) => string;
  /** Reads a file of any kind, `-` for standard input; throws a typed error. */
  readonly readBytes: (path: string) => Uint8Array;
  /** The names of the files in a folder, in order; throws a typed error. */
  readonly listFolder: (path: string) => readonly string[];
  /** Writes a file, over one that is there, or standard output for `-`; throws a typed error. */
  readonly writeBytes: (path: string, bytes: Uint8Array) => void;
  /** Writes a folder of files, whole or not at all; throws a typed error. */
  readonly writeFolder: (path: string, files: ReadonlyMap<string, Uint8Array>) => void;
}
