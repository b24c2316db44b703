#pragma once
// Ceres (libceres-dev), whose headers do not compile under this project's warnings.

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wshadow"
#pragma GCC diagnostic ignored "-Wpedantic"
#pragma GCC diagnostic ignored "-Wdeprecated-declarations"
#include <ceres/ceres.h>
#pragma GCC diagnostic pop
