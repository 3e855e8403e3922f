/** The part of the XML parser used here; the package brings no types. */
declare module "saxen" {
  type Attributes = Readonly<Record<string, string>>;
  export class Parser {
    on(event: "openTag", listener: (name: string, attributes: () => Attributes) => void): this;
    on(event: "closeTag", listener: (name: string) => void): this;
    on(event: "text" | "cdata" | "attention", listener: (text: string) => void): this;
    write(xml: string): this;
    end(): unknown;
  }
}
