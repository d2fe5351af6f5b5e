/** Draws MusicXML as staff notation, in SVG text: a piece for every few systems. */
export type StaffDrawer = (musicXml: string) => string;

/** Loads a module by its name. */
type Load = (name: string) => Promise<unknown>;

/** What is used of Verovio, which comes without types. */
interface Verovio {
  readonly default: () => Promise<unknown>;
  readonly VerovioToolkit: new (
    module: unknown,
  ) => {
    setOptions(options: Readonly<Record<string, string | number | boolean>>): void;
    loadData(data: string): boolean;
    getPageCount(): number;
    renderToSVG(page: number): string;
  };
}

/** A row of four bars is as wide as a page; a piece is as high as three rows or so. */
const LAYOUT = Object.freeze({
  inputFrom: 'xml',
  breaks: 'encoded',
  header: 'none',
  footer: 'none',
  adjustPageHeight: true,
  svgViewBox: true,
  pageWidth: 1750,
  pageHeight: 1300,
  pageMarginLeft: 20,
  pageMarginRight: 20,
  pageMarginTop: 20,
  pageMarginBottom: 20,
  minLastJustification: 0,
  // The same notation has the same ids, another has others.
  xmlIdChecksum: true,
});

/**
 * A drawer of staff notation, where Verovio is installed beside the command: it is 26 MB, and not everyone
 * who writes handouts reads staff notation. Undefined where it is not there.
 */
export async function findStaffDrawer(
  load: Load = (name) => import(name),
): Promise<StaffDrawer | undefined> {
  const found = await loadVerovio(load);
  if (found === undefined) return undefined;
  const { start, VerovioToolkit } = found;
  const toolkit = new VerovioToolkit(await start());
  toolkit.setOptions(LAYOUT);
  return (musicXml) => {
    toolkit.loadData(musicXml);
    const pages = Array.from({ length: toolkit.getPageCount() }, (_, at) => at + 1);
    return pages.map((page) => toolkit.renderToSVG(page)).join('\n');
  };
}

async function loadVerovio(load: Load) {
  try {
    const { default: start } = (await load('verovio/wasm')) as Verovio;
    const { VerovioToolkit } = (await load('verovio/esm')) as Verovio;
    return { start, VerovioToolkit };
  } catch (error) {
    const { code } = error as { readonly code?: unknown };
    if (code === 'ERR_MODULE_NOT_FOUND' || code === 'MODULE_NOT_FOUND') return undefined;
    throw error;
  }
}
