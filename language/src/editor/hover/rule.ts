import { ruleNamed } from '../../rules/registry.ts';
import { boundsText, fallbackText } from '../../rules/settings.ts';
import { describe } from '../../rules/standing.ts';
import { type Part, rows, text, title } from './page.ts';

/** A rule: what it says, what it stands on, what a team may set. */
export function aboutRule(name: string | undefined): Part[] {
    const rule = ruleNamed(name ?? '');
    if (!rule) return [];
    return [
        title(rule.name, rule.severity === 'off' ? 'off unless a team turns it on' : rule.severity),
        text(rule.summary),
        text(describe(rule.standing)),
        ...rows(
            Object.entries(rule.settings).map(([key, setting]) => [key, fallbackText(setting), setting.doc]),
            ['Setting', 'Usually', ''],
        ),
    ];
}

/** One setting of a rule. */
export function aboutSetting(name: string | undefined, key: string | undefined): Part[] {
    const setting = ruleNamed(name ?? '')?.settings[key ?? ''];
    if (key === 'severity')
        return [title('severity'), text('How grave a finding is: error, warning, hint or off.')];
    return setting
        ? [title(key!, fallbackText(setting)), text(`${setting.doc} ${boundsText(setting)}.`)]
        : [];
}
