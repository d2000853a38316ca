import type { DraftKind } from "./kinds.ts";

const DISCLOSED = `{% for line in disclosures %}{{ line }}
{% endfor %}`;

const OUTLINE = `# Opener
Picture: Empty tin on the counter, lid to the left. Title card “{{ episode.title }}”.
Sound: {{ sign_on }} {% for line in disclosures %}{{ line }} {% endfor %}{{ opener }}
{% for day in days %}
# {{ day.name }}{% if day.angle %}: {{ day.angle }}{% endif %}, packing
Picture: Top down into the tin: {{ day.foods }}.
Hold: 12
Sound: {{ day.packed }} {% for swap in day.swaps %}{{ swap }} {% endfor %}{% for line in day.firsts %}{{ line }} {% endfor %}{% for line in day.returns %}{{ line }} {% endfor %}{{ day.minutes }}
{% if day.verdicts.size > 0 or day.quotes.size > 0 %}
# {{ day.name }}, the verdict
Picture: The tin at home, lid off; what came back, close.
Hold: 8
Sound: {% for verdict in day.verdicts %}{{ verdict }} {% endfor %}{% for quote in day.quotes limit: 2 %}{{ quote }} {% endfor %}
{% endif %}{% endfor %}
# Closer
Picture: All the empty tins in a row, then the closed lid.
Hold: 6
Sound: {{ week.tally }} {{ week.finished }} {{ house_phrase }} {{ next }} {{ sign_off }}`;

const SHOTS = `{% for day in days %}{{ day.name }}{% if day.angle %}, {{ day.angle }}{% endif %}
- Empty tin, top down, lid to the left
{% for food in day.food_names %}- Close: {{ food }}, going in
{% endfor %}- The full tin, hero shot, then the lid
- The tin opened at home, hands only

{% endfor %}`;

const TITLES = `{% if told_days.size > 1 %}{{ episode.title }}: {{ told_days.size }} lunches, {{ told_days.first.name }} to {{ told_days.last.name }}
{% endif %}What we packed for {{ episode.title }}
{{ episode.title }} in a lunch tin
{% if week.quote_words %}{{ week.quote_words }} {{ episode.title }}
{% endif %}{{ series.name }}, episode {{ episode.number }}: {{ episode.title }}`;

const DESCRIPTION = `${DISCLOSED}
{{ opener }}

{% for day in told_days %}{{ day.packed }} {% for swap in day.swaps %}{{ swap }} {% endfor %}{{ day.quote }}

{% endfor %}{{ week.tally }} {{ week.finished }} {{ week.untouched }} {% for line in week.firsts %}{{ line }} {% endfor %}{% for line in week.milestones %}{{ line }} {% endfor %}

{{ house_phrase }} {{ sign_off }}`;

const PINNED = `${DISCLOSED}
{% if emoji %}📌 {% endif %}{{ opener }} {{ week.tally }} {% for line in promises.kept %}{{ line }} {% endfor %}

{{ allergens }}

Which of the lunches would you pack first?`;

const LUNCH_POST = `${DISCLOSED}
{% if day %}{% if emoji %}🍱 {% endif %}{{ day.packed }} {% for swap in day.swaps %}{{ swap }} {% endfor %}{% for line in day.firsts %}{{ line }} {% endfor %}{% for line in day.returns %}{{ line }} {% endfor %}{{ day.minutes }}

{% for verdict in day.verdicts %}{{ verdict }} {% endfor %}

{% for quote in day.quotes limit: 2 %}{{ quote }}
{% endfor %}{% endif %}`;

const RECAP = `${DISCLOSED}
{% if emoji %}🍱 {% endif %}{{ opener }}

{{ week.tally }} {{ week.finished }} {{ week.untouched }}

{% for line in week.firsts %}{{ line }} {% endfor %}{% for line in week.returns %}{{ line }} {% endfor %}{% for swap in week.swaps %}{{ swap }} {% endfor %}

{% for quote in week.quotes limit: 3 %}{{ quote }}
{% endfor %}
{% for line in week.milestones %}{{ line }} {% endfor %}{{ next }} {{ sign_off }}`;

const FOUND = `{% if found.size > 0 %}${DISCLOSED}
{% for place in found %}{{ place.shop }}: {{ place.food_names | list }}
{% endfor %}{% endif %}`;

const TEASER = `{% if next %}{{ next }} {{ sign_off }}{% endif %}`;

const REPLIES = `Which foods were in it?
{% for day in told_days %}{{ day.name }}: {{ day.foods }}.
{% endfor %}
Can my child eat this?
{{ allergens }} We can only speak for our own tins; your doctor and your school know yours.
{% if found.size > 0 %}
Where did you get it?
{% for place in found %}{{ place.shop }}: {{ place.food_names | list }}
{% endfor %}{% endif %}{% if week.minutes.size > 0 %}
How long does it take?
{% for line in week.minutes %}{{ line }} {% endfor %}{% endif %}`;

/** The templates that hold until the user writes their own: version 0 of each. */
export const DEFAULT_TEMPLATES: Readonly<Record<DraftKind, string>> = {
  outline: OUTLINE,
  shots: SHOTS,
  titles: TITLES,
  description: DESCRIPTION,
  pinned: PINNED,
  "lunch-post": LUNCH_POST,
  recap: RECAP,
  found: FOUND,
  teaser: TEASER,
  replies: REPLIES,
};
