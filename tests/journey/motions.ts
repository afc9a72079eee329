import type { Page } from 'playwright-core';

/** Names of the animations and transitions that run now, through all open shadow roots. */
export async function motions(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const running = new Set<Animation>();

    function visit(root: Document | ShadowRoot): void {
      for (const one of root.getAnimations()) running.add(one);
      for (const one of root.querySelectorAll('*')) if (one.shadowRoot) visit(one.shadowRoot);
    }

    visit(document);
    return [...running].map((one) => {
      if (one instanceof CSSAnimation) return one.animationName;
      return one instanceof CSSTransition ? one.transitionProperty : one.id;
    });
  });
}
