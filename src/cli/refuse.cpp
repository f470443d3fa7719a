#include "cli/verbs.h"
#include "wire/plan_json.h"

#include <fstream>
#include <ostream>

namespace piewright::cli {

int refuse(const Problems& problems, const Streams& streams) {
    if (streams.json)
        streams.out << wire::toJson(problems);
    else
        streams.err << toText(problems.findings);
    return static_cast<int>(problems.fault);
}

Result<std::string> readWhole(const std::filesystem::path& file, std::size_t most) {
    std::error_code error;
    if (!std::filesystem::is_regular_file(file, error))
        return Problems::one(Fault::World, "can't read it: " + (error ? error.message() : "not a file"),
                             "a readable file", {file.string(), 0, 0, {}});
    std::ifstream in(file, std::ios::binary);
    std::string text(most + 1, '\0');
    if (in) in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (in.bad() || (!in && !in.eof()))
        return Problems::one(Fault::World, "can't read it", "a readable file", {file.string(), 0, 0, {}});
    text.resize(static_cast<std::size_t>(in.gcount()));
    if (text.size() > most)
        return Problems::one(Fault::Input, "it is larger than " + std::to_string(most) + " bytes", "a smaller file",
                             {file.string(), 0, 0, {}});
    return text;
}

} // namespace piewright::cli
