#pragma once
// Every tolerance of the project, with its size, its reason and what breaks when it is changed.

namespace pinwright {

/// Arc length: relative error of length() and of its inverse. Far below what a pencil can show;
/// seams are compared to 0.1 mm, so 1e-9 of a metre-long edge leaves the comparison exact.
inline constexpr double kLengthRelative = 1e-9;
/// Two points are the same place on paper. Used by intersection and validity tests.
inline constexpr double kCoincidentMm = 1e-6;
/// Greatest distance of a polyline from the curve it stands for where a library wants polygons
/// (offset, drawing): a twentieth of a fine pencil line.
inline constexpr double kFlatnessMm = 0.01;
/// A seam is sewn together with at most this difference from the ease that it states.
inline constexpr double kSeamMm = 0.1;
/// A line that runs on over a seam may bend by at most this many degrees.
inline constexpr double kJoinDegrees = 1.0;

}  // namespace pinwright
