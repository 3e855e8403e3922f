import { Autocomplete, Dialog, Input, Modal, ModalOverlay, SearchField } from "react-aria-components";
import { SearchResults } from "@/app/_ui/search/SearchResults";
import { useSearch } from "@/app/_ui/search/useSearch";

interface SearchDialogProps {
  readonly query: string;
  readonly onQuery: (query: string) => void;
  readonly onChoose: (href: string) => void;
  readonly onClose: () => void;
}

/** The field to search in, with what is found below it. */
export function SearchDialog({ query, onQuery, onChoose, onClose }: SearchDialogProps) {
  const answer = useSearch(query);
  return (
    <ModalOverlay
      className="backdrop"
      isDismissable
      isOpen
      onOpenChange={(open) => (open ? undefined : onClose())}
    >
      <Modal className="w-full max-w-2xl border border-ink-2 bg-sheet text-ink">
        <Dialog aria-label="Search" className="outline-none">
          <Autocomplete inputValue={query} onInputChange={onQuery}>
            <SearchField aria-label="Search" className="border-ink border-b-2">
              <Input
                autoFocus
                className="w-full bg-transparent px-4 py-3 text-lg outline-none"
                placeholder="Designation, serial, part number, bin, line"
              />
            </SearchField>
            <SearchResults answer={answer} query={query} onChoose={onChoose} />
          </Autocomplete>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
