import { describeDimension } from '../../../calc/quantity/index.ts';
import { composedSymbol, NAMED, usualUnitTexts } from '../../../calc/quantity/names.ts';
import { UNIT_ATOMS } from '../../../calc/quantity/units.ts';
import { say, sayText } from '../text.ts';

/** What each kind of quantity is usually written in, then every unit by itself. */
export function unitsChapter(): string {
  const usual = NAMED.filter(({ name }) => usualUnitTexts(name, 'EUR').length > 0).map(
    ({ name }) => `- **${sayText(describeDimension(name))}**: ${usualUnitTexts(name, 'EUR').join(', ')}`,
  );
  const atoms = UNIT_ATOMS.map(({ symbol, spellings = [], up, down, offset, dimension, source }) => {
    const si = composedSymbol(dimension);
    const value = `${String(up / down)}${si === '' ? '' : ` ${si}`}${offset === undefined ? '' : ` + ${offset}`}`;
    const also =
      spellings.length === 0 ? '' : ` ${say('Also read: {spellings}.', { spellings: spellings.join(', ') })}`;
    return `- \`${symbol}\` = ${value} (${say('NIST SP 811, {where}', { where: source })}).${also}`;
  });
  return [
    say(
      'Units may be composed: `g/m2`, `EUR/kg`, `mbar`, `K/min`. A composed unit is written in one piece, arithmetic has spaces.',
    ),
    `## ${say('Usual units of each quantity')}\n\n${usual.join('\n')}`,
    `## ${say('Units by themselves')}\n\n${atoms.join('\n')}`,
  ].join('\n\n');
}
