#include "outside/run.h"

#include <exception>
#include <iostream>
#include <vector>

int main(int argc, char** argv) {
    try {
        const std::vector<std::string> arguments(argv + 1, argv + argc);
        return piewright::outside::run(arguments, std::cout, std::cerr);
    } catch (const std::exception& broken) {
        std::cerr << "a fault of ours: " << broken.what() << '\n';
        return 1;
    }
}
