#include "print/pdf_tools.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <unistd.h>

namespace piewright::testing {

namespace {

struct Close {
    void operator()(FILE* pipe) const { pclose(pipe); }
};

bool installed(const std::string& program) {
    return std::system(("command -v " + program + " >/dev/null 2>&1").c_str()) == 0;
}

std::optional<std::string> run(const std::string& program, const std::string& before, const std::string& after,
                               std::string_view pdf) {
    if (!installed(program)) return std::nullopt;
    const std::string file = ::testing::TempDir() + "print-" + std::to_string(getpid()) + ".pdf";
    std::ofstream(file, std::ios::binary) << pdf;
    const std::unique_ptr<FILE, Close> pipe(popen((program + ' ' + before + " '" + file + "' " + after).c_str(), "r"));
    std::string output;
    std::array<char, 4096> buffer{};
    for (std::size_t n = 0; (n = fread(buffer.data(), 1, buffer.size(), pipe.get())) > 0;)
        output.append(buffer.data(), n);
    std::filesystem::remove(file);
    return output;
}

double attribute(const std::string& line, const std::string& name) {
    const std::size_t at = line.find(' ' + name + "=\"");
    return at == std::string::npos ? -1 : std::strtod(line.c_str() + at + name.size() + 3, nullptr);
}

} // namespace

std::optional<std::string> pdfToText(std::string_view pdf) { return run("pdftotext", "-layout", "-", pdf); }
std::optional<std::string> pdfInfo(std::string_view pdf) { return run("pdfinfo", "-l 9999", "", pdf); }
std::optional<std::string> pdfFonts(std::string_view pdf) { return run("pdffonts", "", "", pdf); }

std::optional<std::vector<Word>> pdfWords(std::string_view pdf) {
    const auto html = run("pdftotext", "-bbox", "-", pdf);
    if (!html) return std::nullopt;
    std::vector<Word> words;
    Word word;
    std::istringstream lines(*html);
    for (std::string line; std::getline(lines, line);) {
        if (line.find("<page ") != std::string::npos) {
            ++word.page;
            word.pageWidth = attribute(line, "width");
            word.pageHeight = attribute(line, "height");
        }
        if (line.find("<word ") == std::string::npos) continue;
        word.left = attribute(line, "xMin"), word.top = attribute(line, "yMin");
        word.right = attribute(line, "xMax"), word.bottom = attribute(line, "yMax");
        const std::size_t from = line.find('>') + 1;
        word.text = line.substr(from, line.find("</word>") - from);
        words.push_back(word);
    }
    return words;
}

} // namespace piewright::testing
