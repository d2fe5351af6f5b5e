import type { Command } from 'commander';
import type { Terminal } from './terminal.js';

/** Gives the command of a verb its options, its examples and what it does. */
export type SetUpVerb = (verb: Command, terminal: Terminal) => void;
