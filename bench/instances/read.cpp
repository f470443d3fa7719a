#include "instances/read.h"

#include "instances/formats.h"

#include <fstream>
#include <sstream>

namespace piewright::bench {

Result<Instance> readInstance(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    if (!in) return Problems::one(Fault::World, "cannot be read", "an instance file", {path, 0, 0, {}});
    std::ostringstream text;
    text << in.rdbuf();
    const std::string content = std::move(text).str();
    std::optional<Instance> instance;
    if (content.find("PRECEDENCE RELATIONS") != std::string::npos) {
        instance = readProjectSm(content);
    } else if (content.find("nActs") != std::string::npos) {
        instance = readMultiSkillDzn(content);
    } else if (content.find('[') != std::string::npos) {
        instance = readProjectMaxSch(content);
    } else {
        instance = readFlexibleShop(content);
    }
    if (!instance) {
        return Problems::one(Fault::Input,
                             "is in none of the formats .sm, .sch, .dzn and flexible job shop, or is cut short",
                             "a whole instance file", {path, 0, 0, {}});
    }
    if (const auto faults = schedule::faultsIn(instance->problem); !faults.empty()) {
        return Problems::one(Fault::Input, faults.front(), "an instance that can be stated", {path, 0, 0, {}});
    }
    return *std::move(instance);
}

} // namespace piewright::bench
