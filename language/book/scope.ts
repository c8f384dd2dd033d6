import {
  type AstNodeDescription,
  type ReferenceInfo,
  type Scope,
  type ScopeProvider,
  type Stream,
  stream,
} from 'langium';
import type { BookNames } from './names.ts';
import type { LayupServices } from './services.ts';

/** Langium's view of the names, for those who list what may stand at a place. */
export class LayupScopeProvider implements ScopeProvider {
  readonly #names: () => BookNames;

  constructor(services: LayupServices) {
    this.#names = () => services.names;
  }

  getScope(context: ReferenceInfo): Scope {
    return new NamesScope(this.#names(), context);
  }
}

class NamesScope implements Scope {
  readonly #names: BookNames;
  readonly #context: ReferenceInfo;

  constructor(names: BookNames, context: ReferenceInfo) {
    this.#names = names;
    this.#context = context;
  }

  getElement(name: string): AstNodeDescription | undefined {
    const reference = { ...this.#context.reference, $refText: name } as ReferenceInfo['reference'];
    return this.#names.resolve({ ...this.#context, reference });
  }

  getElements(name: string): Stream<AstNodeDescription> {
    const element = this.getElement(name);
    return stream(element === undefined ? [] : [element]);
  }

  getAllElements(): Stream<AstNodeDescription> {
    return stream(this.#names.candidates(this.#context.container, this.#context.property));
  }
}
