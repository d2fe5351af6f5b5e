import { type Chart, type Feel, FORMS } from '@reedplate/form';
import type { Harp } from '@reedplate/layout';
import { sayHarp } from './say-harp.js';

/** The name of a form by its id; the id of one that the catalogue has not. */
export function nameOfForm(id: string): string {
  return FORMS.find((form) => form.id === id)?.name ?? id;
}

/** A song in words: `Basic twelve-bar in G`, with the harp where there is one. */
export function saySong({ form, key }: Pick<Chart, 'form' | 'key'>, harp?: Harp): string {
  const song = `${nameOfForm(form)} in ${key}`;
  return harp === undefined ? song : `${song} on the ${sayHarp(harp)}`;
}

/** A chart in words: its form, key, metre and feel. */
export function titleOfChart(chart: Pick<Chart, 'form' | 'key' | 'metre' | 'feel'>): string {
  return `${saySong(chart)}, ${chart.metre}, ${FEEL_NAMES[chart.feel]}`;
}

const FEEL_NAMES: Readonly<Record<Feel, string>> = {
  straight: 'straight',
  shuffle: 'shuffle',
  'slow-12/8': 'slow',
};
