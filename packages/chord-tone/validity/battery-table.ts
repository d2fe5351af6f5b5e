import { HOLDS_FROM, tryJudgements } from './battery.js';
import { table } from './table.js';

/** Whether the score agrees with a teacher on made takes. */
export function batteryTable(): string {
  const tried = tryJudgements();
  const holding = tried.filter(({ held, of }) => held / of >= HOLDS_FROM);
  const rows = tried.map(({ judgement, held, of, broken }) => [
    judgement.says,
    judgement.why,
    `${held} of ${of}`,
    held / of >= HOLDS_FROM
      ? 'yes'
      : `no: ${[...new Set(broken.map((name) => name.split(',')[0]))].join('; ')}`,
  ]);
  const limits = tried.flatMap(({ judgement: { says, limit }, held, of }) =>
    held / of < HOLDS_FROM && limit !== undefined ? [`- ${says}: ${limit}.`] : [],
  );
  return `## Does it agree with a teacher?

Takes whose worth a teacher knows, made over six charts with three seeds each (\`validity/takes.ts\`), and
${tried.length} judgements of them (\`validity/judgements.ts\`). A judgement holds where it does in ${100 * HOLDS_FROM} % of its trials:
${holding.length} of ${tried.length} do.

${table(['judgement', 'why', 'trials', 'holds'], rows)}

What limits those that do not:

${limits.join('\n')}`;
}
