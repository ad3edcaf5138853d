/** What it is, the words, and whether a page shows them as typed. */
export const PAYLOADS: readonly (readonly [string, string, 'as typed' | 'otherwise'])[] = [
  [
    'HTML',
    '</td></table></section></body><script>alert(1)</script><img src=x onerror=alert(1)><iframe src=//example.org></iframe><base href=//example.org><meta http-equiv=refresh content=0><form action=//example.org>',
    'as typed',
  ],
  [
    'an attribute',
    `" onmouseover="alert(1)" style="position:fixed;inset:0" x=' onclick='alert(1)' \` onload=\`alert(1)`,
    'as typed',
  ],
  ['HTML that never ends', '<!-- <![CDATA[ <style> <textarea> <plaintext> <title> <', 'as typed'],
  ['ends of markup', '--> ]]> /> > </style> </title> </textarea> </svg> </text>', 'as typed'],
  [
    'SVG',
    '</text></svg><svg onload=alert(1)><use href="https://example.org/x#y"/><foreignObject><a xlink:href="javascript:alert(1)">x</a><animate attributeName=href>',
    'as typed',
  ],
  [
    'a template',
    '{{shell}} {{{title}}} {{#each this}}{{this}}{{/each}} {{> table}} {{drawing this}} {{lookup this "constructor"}} {{constructor.constructor "return process"}} {{__proto__}} {{!-- {{@root}}',
    'as typed',
  ],
  [
    'style',
    '</style><style>*{background:url(https://example.org/x)}</style> ;}*{color:expression(alert(1))} "; @import url(//example.org); \\22 \\3c',
    'as typed',
  ],
  [
    'addresses',
    'javascript:alert(1) file:///etc/passwd https://example.org/x data:text/html,<script>1</script> url(//example.org)',
    'as typed',
  ],
  [
    'signs already escaped',
    '&lt;script&gt;alert(1)&lt;/script&gt; &#60;b&#62; &quot; &amp;amp; \\u003cb\\u003e %3Cb%3E',
    'as typed',
  ],
  // Canonical composition (UAX #15): `>` and U+0338 are U+226F, so that a tag before it would not end.
  ['a stroke over the end of a tag', '\u0338 onmouseover=alert(1) x=\u0323\u0338', 'otherwise'],
  [
    'signs that steer',
    '\u202e\u2066\u200f\u061c\u0000\u0007\u001b]8;;https://example.org\u0007 \u009b31m \ud800 \u2028\ufeff\ufffe',
    'otherwise',
  ],
];
