import { isSentence, textsOfMarkup } from './find-texts.js';

const markupTags = new Set(['html', 'svg']);

/** Every text goes through `msg`, where another language can take its place. */
export const textsRule = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      untaken: 'Take this text through msg(): “{{text}}”.',
      eager: 'Ask for this text when it is shown, in a function: the language may change.',
    },
  },
  create(context) {
    const complain = (node, text) =>
      context.report({ node, messageId: 'untaken', data: { text: text.slice(0, 60) } });
    return {
      TaggedTemplateExpression(node) {
        if (!markupTags.has(node.tag.name) || isArgumentOfMsg(node)) return;
        const pieces = node.quasi.quasis.map(({ value }) => value.cooked);
        for (const text of textsOfMarkup(pieces)) complain(node, text);
      },
      Literal(node) {
        if (typeof node.value === 'string' && isSentence(node.value) && isForPeople(node)) {
          complain(node, node.value);
        }
      },
      TemplateLiteral(node) {
        const text = node.quasis.map(({ value }) => value.cooked).join('…');
        if (isSentence(text) && isForPeople(node)) complain(node, text);
      },
      'CallExpression[callee.name="msg"]'(node) {
        if (!isLazy(node)) context.report({ node, messageId: 'eager' });
      },
    };
  },
};

const isMsg = (node) => node?.type === 'CallExpression' && node.callee.name === 'msg';
const isArgumentOfMsg = (node) => isMsg(node.parent) && node.parent.arguments[0] === node;

/** Not what only a developer reads, nor a name that is compared or looked up. */
function isForPeople(node) {
  const { parent } = node;
  if (isArgumentOfMsg(node) || parent.type === 'TaggedTemplateExpression') return false;
  if (parent.type === 'BinaryExpression' && /^[!=]==?$/.test(parent.operator)) return false;
  if (/^(?:Import|Export|TS)/.test(parent.type) && parent.type !== 'TSAsExpression') return false;
  if (parent.type === 'Property' && parent.key === node) return false;
  if (parent.type === 'SwitchCase' || parent.type === 'MemberExpression') return false;
  for (let up = parent; up; up = up.parent) {
    if (up.type === 'ThrowStatement' || up.type === 'Decorator') return false;
    if (up.type === 'NewExpression' && /Error$/.test(up.callee.name ?? '')) return false;
    if (/Function|Statement$/.test(up.type)) return true;
  }
  return true;
}

/** Inside a function or a getter: a field keeps what it was given in the language of then. */
function isLazy(node) {
  for (let up = node.parent; up; up = up.parent) {
    if (/Function/.test(up.type)) return true;
    if (up.type === 'PropertyDefinition') return false;
  }
  return false;
}
