import type { RuleSetting, Setting as SettingNode, Waive } from '../../grammar/generated/ast.ts';
import { instead, problem } from '../plan/checks/problem.ts';
import type { Finding } from '../plan/finding.ts';
import { placeOf, placeOfProperty } from '../plan/place.ts';
import { withArticle } from '../plan/wording.ts';
import { nearest } from '../units/nearest.ts';
import { isQuantityError, parseQuantity } from '../units/parse.ts';
import { si } from '../units/quantity.ts';
import { nearestRule, ruleNamed } from './registry.ts';
import type { Rule } from './rule.ts';
import { listed } from './say.ts';
import { boundsText, fallbackText, isUsable, type Setting } from './settings.ts';

const severities = ['error', 'warning', 'hint', 'off'] as const;

/** Names of rules and of their settings that there are not, and settings that are not of their kind. */
export function checkRuleWords(node: RuleSetting | Waive): Finding[] {
    if (!node.rule) return [];
    const rule = ruleNamed(node.rule);
    if (!rule) return [unknownRule(node)];
    if (node.$type === 'Waive') return rule.check ? [] : [beyondWaiving(node, rule)];
    return [...node.settings.flatMap((setting) => faultOf(setting, rule) ?? []), ...saidTwice(node.settings)];
}

function saidTwice(settings: readonly SettingNode[]): Finding[] {
    return settings.flatMap((node, index) => {
        const before = settings.slice(0, index).find(({ key }) => key !== undefined && key === node.key);
        if (!before) return [];
        const at = placeOf(node);
        return [
            problem('duplicate', at, {
                what: `\`${node.key}\` is said twice in this block.`,
                why: 'The first one counts; the other may be the one that was meant.',
                remedy: 'Keep one of them.',
                related: [{ at: placeOf(before), what: 'The first one.' }],
                fixes: [{ title: 'Take this one out', edits: [{ at, text: '' }] }],
            }),
        ];
    });
}

function unknownRule(node: RuleSetting | Waive): Finding {
    const at = placeOfProperty(node, 'rule');
    const near = nearestRule(node.rule!);
    return problem('unknown-name', at, {
        what: `There is no rule called \`${node.rule}\`.`,
        why: 'It has no effect.',
        remedy: near ? `Did you mean \`${near.name}\`?` : 'The index of rules lists them all.',
        fixes: near ? [instead(at, near.name)] : [],
    });
}

function beyondWaiving(node: Waive, rule: Rule): Finding {
    return problem('value', placeOfProperty(node, 'rule'), {
        what: `A plan cannot waive ${rule.name}, which is about the file.`,
        remedy: `Set it in the team's rules: rule ${rule.name} { severity off }.`,
    });
}

function faultOf(node: SettingNode, rule: Rule): Finding | undefined {
    if (!node.key) return undefined;
    if (node.key === 'severity') return faultOfWord(node, 'severity', severities);
    const setting = rule.settings[node.key];
    if (!setting) return unknownSetting(node, rule);
    return node.amount ? faultOfQuantity(node, setting) : wantsNumber(node, setting);
}

function unknownSetting(node: SettingNode, rule: Rule): Finding {
    const at = placeOfProperty(node, 'key');
    const known = ['severity', ...Object.keys(rule.settings)];
    const near = nearest(node.key, known);
    return problem('unknown-word', at, {
        what: `The rule ${rule.name} has no setting \`${node.key}\`.`,
        remedy: near ? `Did you mean \`${near}\`?` : `It has ${listed(known)}.`,
        fixes: near ? [instead(at, near)] : [],
    });
}

function faultOfWord(node: SettingNode, word: string, options: readonly string[]): Finding | undefined {
    if (node.choice && options.includes(node.choice)) return undefined;
    const property = node.choice ? 'choice' : node.text ? 'text' : 'amount';
    const at = placeOfProperty(node, property);
    const near = node.choice && nearest(node.choice, options);
    if (node.text !== undefined && options.includes(node.text)) {
        return problem('value', at, {
            what: `${word} is written without quotes.`,
            fixes: [instead(at, node.text)],
        });
    }
    return problem('value', at, {
        what: `${word} cannot be \`${node.choice ?? writtenIn(node)}\`.`,
        remedy: near ? `Did you mean \`${near}\`?` : `It can be ${listed(options, 'or')}.`,
        fixes: near ? [instead(at, near)] : [],
    });
}

function writtenIn(node: SettingNode): string {
    return node.amount?.$cstNode?.text ?? node.text ?? '';
}

function faultOfQuantity(node: SettingNode, setting: Setting): Finding | undefined {
    const at = placeOf(node.amount!);
    const written = node.amount!.$cstNode?.text ?? '';
    const read = parseQuantity(written, setting.dimension);
    // What is no quantity at all is said by whoever judges quantities.
    if (!isQuantityError(read)) {
        if (isUsable(si(read), setting)) return undefined;
        return problem('quantity', at, {
            what: `${node.key} cannot be ${written}: it is from ${boundsText(setting)}.`,
            remedy: exampleOf(node.key, setting),
        });
    }
    if (isQuantityError(parseQuantity(written))) return undefined;
    return problem('quantity', at, {
        what: `${node.key}: ${read.message}`,
        remedy: read.instead.length === 0 ? exampleOf(node.key, setting) : undefined,
        fixes: read.instead.map((text) => instead(at, text)),
    });
}

function wantsNumber(node: SettingNode, setting: Setting): Finding {
    const what = `${node.key} is ${withArticle(setting.dimension)}, and \`${node.choice ?? node.text ?? ''}\` is none.`;
    const at = placeOfProperty(node, node.choice ? 'choice' : 'text');
    return problem('value', at, { what, remedy: exampleOf(node.key, setting) });
}

function exampleOf(key: string, setting: Setting): string | undefined {
    return setting.fallback && `For instance \`${key} ${fallbackText(setting)}\`.`;
}
