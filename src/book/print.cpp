#include "book/kinds.h"
#include "book/read.h"

namespace piewright::book {

Texts printTexts(const Book& book) {
    Texts texts;
    for (const BookFile& file : bookFiles()) {
        std::string text = file.print(book);
        if (file.needed || !text.empty()) texts.emplace(file.name, std::move(text));
    }
    return texts;
}

} // namespace piewright::book
