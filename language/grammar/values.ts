import { type CstNode, DefaultValueConverter, type GrammarAST, type ValueType } from 'langium';

/** Texts lose their quotes and nothing else; numbers stay as typed (trailing zeros were typed on purpose). */
export class LayupValueConverter extends DefaultValueConverter {
  protected override runConverter(rule: GrammarAST.AbstractRule, input: string, cstNode: CstNode): ValueType {
    if (rule.name === 'STRING') return input.slice(1, -1);
    if (rule.name === 'OPEN_STRING') return input.slice(1);
    if (rule.name === 'ID' || rule.name === 'WORD') return input;
    return super.runConverter(rule, input, cstNode);
  }
}
