#include "cli/run.h"

#include <iostream>
#include <string>
#include <vector>

int main(int argc, char** argv) {
    const int code =
        piewright::cli::run(std::vector<std::string>(argv + 1, argv + argc), std::cin, std::cout, std::cerr);
    std::cout.flush();
    // A full disk or a closed pipe shows only here.
    return code == 0 && !std::cout ? 3 : code;
}
