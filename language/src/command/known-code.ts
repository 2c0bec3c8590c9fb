import { ruleNamed, rules } from '../rules/registry.ts';
import { textCodeNamed, textCodes } from '../rules/text-codes.ts';
import { nearest } from '../units/nearest.ts';
import { Refusal } from './refusal.ts';

/**
 * The name of a rule, or a code that is none, as somebody typed it.
 *
 * @throws Refusal with the one that was probably meant
 */
export function knownCode(name: string): string {
    if (ruleNamed(name) || textCodeNamed(name)) return name;
    const meant = nearest(
        name,
        [...rules, ...textCodes].map((each) => each.name),
    );
    const suggestion = meant ? `Did you mean ${meant}?` : 'layback explain lists them all.';
    throw new Refusal(`There is no rule ${name}. ${suggestion}`);
}
