// What stands in a file, without any library's types: values with the place they stand at.
#pragma once

#include "units/civil.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace piewright::toml {

struct Member;

/// One value of a TOML document.
struct Node {
    enum class Kind { Text, Integer, Real, Truth, Day, Time, List, Table };
    Kind kind = Kind::Table;
    int line = 0; ///< of the value; of a table under a header, of the header
    int column = 0;
    std::string text;            ///< Text
    std::int64_t number = 0;     ///< Integer
    bool truth = false;          ///< Truth
    Date date;                   ///< Day
    std::vector<Node> items;     ///< List
    std::vector<Member> members; ///< Table, in the order they stand in the file

    [[nodiscard]] const Node* find(std::string_view key) const;
};

/// A key of a table and what it holds.
struct Member {
    std::string key;
    int line = 0; ///< of the key
    int column = 0;
    Node value;
};

inline const Node* Node::find(std::string_view key) const {
    for (const Member& member : members)
        if (member.key == key) return &member.value;
    return nullptr;
}

} // namespace piewright::toml
