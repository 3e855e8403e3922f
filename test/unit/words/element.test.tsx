import { renderToStaticMarkup } from "react-dom/server";
import { afterEach, describe, expect, test } from "vitest";
import { SPEAKER } from "@/lib/words/say";
import { makeSpeaker } from "@/lib/words/speaker";

const world = globalThis as { [SPEAKER]?: unknown };

const german = makeSpeaker({
  "Line {0} stops {1} times": "{1} Stillstände der Anlage {0}",
  Close: "Schließen",
  Name: "Bezeichnung",
  Spare: "Ersatzteil",
  "Showing {0} lines": "{0} Anlagen",
});

const inGerman = (make: () => React.ReactNode) => {
  world[SPEAKER] = () => german;
  return renderToStaticMarkup(make());
};

afterEach(() => {
  delete world[SPEAKER];
});

function Named({ label }: { readonly label: string }) {
  return <i>{label}</i>;
}

const times = 3;

describe("an element in the reader's language", () => {
  test("is one sentence whose words and elements change their order", () => {
    expect(
      inGerman(() => (
        <p>
          Line <b>Press 4</b> stops {times} times
        </p>
      )),
    ).toBe("<p>3 Stillstände der Anlage <b>Press 4</b></p>");
    expect(inGerman(() => <p>Showing {12} lines</p>)).toBe("<p>12 Anlagen</p>");
  });

  test("has its attributes put into words, and nothing a machine reads", () => {
    expect(
      inGerman(() => (
        <button type="button" aria-label="Close" title="Close" className="Close" name="Close">
          ×
        </button>
      )),
    ).toBe(
      '<button type="button" aria-label="Schließen" title="Schließen" class="Close" name="Close">×</button>',
    );
  });

  test("shows texts handed through parts of our own", () => {
    expect(inGerman(() => <Named label="Spare" />)).toBe("<i>Ersatzteil</i>");
    expect(inGerman(() => <>Close</>)).toBe("Schließen");
  });

  test("leaves data and code alone", () => {
    expect(inGerman(() => <td translate="no">Name</td>)).toBe('<td translate="no">Name</td>');
    expect(inGerman(() => <code>Name</code>)).toBe("<code>Name</code>");
  });

  test("is React's own in English", () => {
    expect(renderToStaticMarkup(<p>Close</p>)).toBe("<p>Close</p>");
  });
});
