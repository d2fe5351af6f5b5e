import { THEME_IDS } from '@reedplate/picture';
import { ReedplateError, requireOneOf } from '@reedplate/pitch';
import type { Command } from 'commander';
import { withMaybeChartForLineOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { withMaybeHarpOptions } from '../../shared/harp-options.js';
import { withLevel } from '../../shared/level-options.js';
import { withPart } from '../../shared/part-option.js';
import type { Terminal } from '../../terminal.js';
import { DRAWERS, PICTURE_IDS, type PictureId, type PictureWords } from './drawers.js';

/** Gives `reedplate picture` its options and what it does. */
export function setUpPicture(verb: Command, terminal: Terminal): void {
  const command = withMaybeChartForLineOptions(verb);
  withLevel(withPart(withMaybeHarpOptions(command, 'harp that is drawn or played')))
    .argument('<what>', `what to draw: ${PICTURE_IDS.join(', ')}`)
    .option(
      '--take <file>',
      'the line of line, score, breath, effort and fit: JSON, MIDI, ABC, tab …',
    )
    .option('--chord <chord>', 'chord whose tones the harp is marked with')
    .option('--degrees', 'name the notes of the harp by degree', false)
    .option('--mirrored', 'draw the harp with hole 1 at the right', false)
    .option('--band', 'draw the chart for a band, names large', false)
    .option('--slide', 'draw the chart as a slide of 16 to 9', false)
    .option('--theme <theme>', `how it looks: ${THEME_IDS.join(', ')}`, 'screen')
    .option('--width <pixels>', 'how wide it is')
    .option('--title <title>', 'title; without it what is drawn')
    .option('--text', 'write what it shows in words instead', false)
    .option('-o, --output <file>', 'file to write, - for standard output', '-')
    .addHelpText(
      'after',
      examples(
        'reedplate picture harp --harp C --key G --chord G7 -o harp.svg',
        'reedplate picture chart --form basic --key G --harp C -o chart.svg',
        'reedplate picture line --take take.json --harp C -o line.svg',
        'reedplate picture score --take take.json --form basic --key G -o score.svg',
      ),
    )
    .action((what: string, words: PictureWords) => {
      const id: PictureId = requireOneOf(what, PICTURE_IDS, { what: 'a picture' });
      requireSvg(words);
      const { svg, text } = DRAWERS[id](words, terminal);
      const written = words.text ? `${text}\n` : `${svg}\n`;
      terminal.writeBytes(words.output, new TextEncoder().encode(written));
      if (words.output !== '-') terminal.out(`wrote ${words.output}\n`);
    });
}

/** Of a name that promises another kind of picture nothing could be opened. */
function requireSvg({ output, text }: PictureWords): void {
  if (text || output === '-' || output.toLowerCase().endsWith('.svg')) return;
  throw new ReedplateError({
    code: 'FORMAT_UNKNOWN',
    value: output,
    expected: 'a name that ends in .svg',
  });
}
