/** The plan beside the text: from a key to the picture that the page is sent, over the protocol. */
import { type DrawingParams, type DrawingResult, drawingRequest } from '../../language/protocol/drawing.ts';
import { type MemoryServer, startMemoryServer } from '../harness/memory-server.ts';
import { sampleFiles } from '../harness/sample.ts';
import type { Bench, Measure } from './measure.ts';

const rounds = 15;

/** An outline of many points, and plies that are wrapped round it with darts: a wavy ellipse of 1.2 m by 0.8 m. */
function wavyRecipe(points: number, plies: number): string {
  const outline = Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    const wave = 1 + 0.01 * Math.cos(12 * angle);
    return `${(600 * wave * Math.cos(angle)).toFixed(3)} ${(400 * wave * Math.sin(angle)).toFixed(3)}`;
  });
  const stack = Array.from(
    { length: plies },
    (_, i) => `    ply p${i} triax_680 at ${(i % 2) * 90} deg, wrap onto body by 25 mm, darts auto`,
  );
  return `notation 1

recipe wavy {
  part {
    outline path "M ${outline.join(' L ')} Z"
    edge round 8 mm
  }
  stack from tool sled_tool {
${stack.join('\n')}
    core body foam_80 20 mm, perforate 2 mm every 50 mm
    ply inner triax_680 at 0 deg, net
  }
  process infusion with epoxy_slow at 23 degC {
    lay stack
    peel nylon_85, 80 mm past edge
    bag film_50
  }
}
`;
}

interface Edited {
  readonly name: string;
  readonly file: string;
  readonly text: string;
  readonly recipe: string;
  /** what is typed over, and what in its place in a round */
  readonly from: string;
  to(round: number): string;
}

/** The shortest time from the change of the text to the answer: the one that the machine's other work disturbed least. */
async function redrawn(server: MemoryServer, { file, text, recipe, from, to }: Edited): Promise<number> {
  const uri = server.uriOf(file);
  let known: Record<string, string> = {};
  const draw = async (): Promise<void> => {
    const params: DrawingParams = { uri, view: 'plan', recipe: { recipe }, known };
    const { picture, nothing } = await server.client.sendRequest<DrawingResult>(drawingRequest, params);
    if (picture === undefined) throw new Error(`no plan of ${recipe}: ${nothing}`);
    known = Object.fromEntries(picture.groups.map(({ key, mark }) => [key, mark]));
  };
  await draw();
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const started = performance.now();
    await server.change(file, { text: text.replace(from, to(round)) });
    await draw();
    times.push(performance.now() - started);
    await server.settled();
  }
  return Math.min(...times);
}

export const measure: Bench = async () => {
  const wavy = wavyRecipe(2000, 20);
  const edits: readonly Edited[] = [
    {
      name: 'plan of the sled deck, from a key to its picture',
      file: 'sled_deck.layup',
      text: sampleFiles['sled_deck.layup'] ?? '',
      recipe: 'sled_deck',
      from: '80 mm past edge',
      to: (round) => `${81 + round} mm past edge`,
    },
    {
      name: 'the same, 20 wrapped plies on an outline of 2,000 points, an angle',
      file: 'wavy.layup',
      text: wavy,
      recipe: 'wavy',
      from: 'inner triax_680 at 0 deg',
      to: (round) => `inner triax_680 at ${1 + round} deg`,
    },
  ];
  const server = await startMemoryServer({ ...sampleFiles, 'wavy.layup': wavy });
  try {
    const measures: Measure[] = [];
    for (const edit of edits) {
      await server.open(edit.file, edit.text);
      await server.settled();
      measures.push({ name: edit.name, value: await redrawn(server, edit), unit: 'ms', budget: 150 });
    }
    return measures;
  } finally {
    server.stop();
  }
};
