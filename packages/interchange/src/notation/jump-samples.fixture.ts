/** A piece with jumps, invented: what each measure says, a letter its note. */
export interface JumpSample {
  readonly name: string;
  readonly xml: string;
  /** The letters of the measures as they are to be played. */
  readonly played: string;
  /** The same in ABC. */
  readonly abc: string;
}

type Marks = Readonly<Record<string, string>>;

/** A direction as notation programs write them: what is shown, and the sound that plays it. */
function direction(shown: string, sound: Marks): string {
  const attributes = Object.entries(sound).map(([name, value]) => ` ${name}="${value}"`);
  const type = /^<|^$/u.test(shown) ? shown : `<words>${shown}</words>`;
  return `<direction><direction-type>${type}</direction-type><sound${attributes.join('')}/></direction>`;
}

const BEFORE: Readonly<Record<string, string>> = {
  segno: direction('<segno/>', { segno: '1' }),
  coda: direction('<coda/>', { coda: '1' }),
  '|:': '<barline location="left"><repeat direction="forward"/></barline>',
  '[1': '<barline location="left"><ending number="1" type="start"/></barline>',
  '[2': '<barline location="left"><ending number="2" type="start"/></barline>',
};

const AFTER: Readonly<Record<string, string>> = {
  fine: direction('Fine', { fine: 'yes' }),
  toCoda: direction('To Coda', { tocoda: '1' }),
  dc: direction('D.C.', { dacapo: 'yes' }),
  dcFine: direction('D.C. al Fine', { dacapo: 'yes' }),
  dcCoda: direction('D.C. al Coda', { dacapo: 'yes' }),
  dsFine: direction('D.S. al Fine', { dalsegno: '1' }),
  dsCoda: direction('D.S. al Coda', { dalsegno: '1' }),
  ':|': '<barline location="right"><repeat direction="backward"/></barline>',
  '1]:|':
    '<barline location="right"><ending number="1" type="stop"/><repeat direction="backward"/></barline>',
  '2]': '<barline location="right"><ending number="2" type="stop"/></barline>',
};

function measure(text: string, at: number): string {
  const words = text.split(' ');
  const note = words.find((word) => /^[A-G]$/u.test(word));
  const of = (table: Readonly<Record<string, string>>): string =>
    words.map((word) => table[word] ?? '').join('');
  const head =
    at === 0
      ? '<attributes><divisions>1</divisions><key><fifths>0</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef></attributes>'
      : '';
  return `<measure number="${at + 1}">${head}${of(BEFORE)}<note><pitch><step>${note}</step><octave>4</octave></pitch><duration>4</duration><voice>1</voice><type>whole</type></note>${of(AFTER)}</measure>`;
}

const IN_ABC: Readonly<Record<string, string>> = {
  segno: '!segno!',
  coda: '!coda!',
  fine: '!fine!',
  toCoda: '!dacoda!',
  dc: '!D.C.!',
  dcFine: '!D.C.alfine!',
  dcCoda: '!D.C.alcoda!',
  dsFine: '!D.S.alfine!',
  dsCoda: '!D.S.alcoda!',
  '1]:|': ':|',
  '2]': '',
};

function toAbc(text: string): string {
  const words = text.split(' ').map((word) => IN_ABC[word] ?? word.replace(/^[A-G]$/u, '$&4'));
  const music = words
    .join(' ')
    .replaceAll(/:\| \|/gu, ':|')
    .replaceAll('| |:', '|:');
  return `X:1\nM:4/4\nL:1/4\nK:C\n${music} |]\n`;
}

function sample(text: string, played: string): JumpSample {
  const measures = text.split(' | ').map(measure).join('');
  return {
    name: text,
    xml: `<?xml version="1.0"?><score-partwise version="3.1"><part-list><score-part id="P1"><part-name>Tune</part-name></score-part></part-list><part id="P1">${measures}</part></score-partwise>`,
    played,
    abc: toAbc(text),
  };
}

/** Jumps of every kind, with and without repeats. */
export const JUMP_SAMPLES: readonly JumpSample[] = [
  sample('C | D fine | E | F dcFine', 'CDEFCD'),
  sample('C | segno D | E fine | F dsFine', 'CDEFDE'),
  sample('C | D toCoda | E dcCoda | coda F | G', 'CDECDFG'),
  sample('C | segno D | E toCoda | F dsCoda | coda G', 'CDEFDEG'),
  sample('|: C | D :| | E fine | F dcFine', 'CDCDEFCDE'),
  sample('|: C | [1 D 1]:| | [2 E 2] fine | F dcFine', 'CDCEFCE'),
  sample('C | segno |: D :| | E toCoda | F dsCoda | coda G', 'CDDEFDEG'),
];
